import { createHash } from 'node:crypto';
import { deflateRawSync, inflateRawSync } from 'node:zlib';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { RESPONSE_DICTIONARY_1 } from '../../../src/domain/exchange/dictionary.ts';
import { RESPONSE_LIMITS, type Response } from '../../../src/domain/exchange/response.ts';
import { readResponse, responseBytes } from '../../../src/domain/exchange/response-bytes.ts';
import { responseOf, standingIn, type Telling, untold } from '../../../src/domain/exchange/tell.ts';
import type { LogEntry } from '../../../src/domain/log/entry.ts';
import {
  ALL,
  EVENING,
  entry,
  logs,
  NOTHING_MORE,
  teller,
  tellings,
} from '../../drivers/exchange/answers.ts';

const dictionary = Buffer.from(RESPONSE_DICTIONARY_1, 'utf8');
const asSealed = (text: string): Uint8Array =>
  new Uint8Array(deflateRawSync(Buffer.from(text, 'utf8'), { dictionary }));

function bytesOf(response: Response): Uint8Array {
  const bytes = responseBytes(response);
  if (!bytes.ok) throw new Error(bytes.error);
  return bytes.value;
}

const inside = (bytes: Uint8Array): string =>
  inflateRawSync(bytes, { dictionary }).toString('utf8');

const told = logs.chain((log) => fc.record({ log: fc.constant(log), telling: tellings(log) }));

describe('what goes into a response', () => {
  const log = [
    entry({ id: 'one', day: 0, feeling: { effort: 5, niggle: { place: 'knee', side: 'left' } } }),
    entry({ id: 'two', day: 2, group: 'teal', feeling: { effort: 7, effortLater: 6 } }),
    entry({ id: 'three', day: 4, feeling: { warningSign: true, note: 'Wind on the sea wall' } }),
    entry({ id: 'other', day: 5, programme: 'marsh-mile' }),
  ];

  it('TELL-1 is programme, secret, name, group and the chosen sessions in the order of their start', () => {
    const response = responseOf(teller(log), { ids: ['three', 'one'], ...ALL, name: ' Rosa ' });
    expect(response).toEqual({
      format: 'towpath-response/1',
      programme: { id: 'heron-loop-spring', revision: 3 },
      secret: '7f'.repeat(16),
      name: 'Rosa',
      group: 'wren',
      sentAt: EVENING,
      leftOut: 1,
      entries: [
        {
          id: 'one',
          week: 1,
          session: 1,
          startedAt: Date.UTC(2027, 2, 1, 17, 30),
          offsetMinutes: 0,
          zone: 'Europe/London',
          localDate: '2027-03-01',
          doneSeconds: 1860,
          activeSeconds: 1860,
          target: 50,
          effort: 5,
          niggle: { place: 'knee', side: 'left' },
        },
        {
          id: 'three',
          week: 1,
          session: 5,
          startedAt: Date.UTC(2027, 2, 5, 17, 30),
          offsetMinutes: 0,
          zone: 'Europe/London',
          localDate: '2027-03-05',
          doneSeconds: 1860,
          activeSeconds: 1860,
          target: 50,
          warningSign: true,
          note: 'Wind on the sea wall',
        },
      ],
    });
  });

  it('TELL-1 a note goes along in its lines, without what cannot be seen, and no longer than taken', () => {
    const noted = (note: string) =>
      responseOf(teller([entry({ id: 'one', feeling: { note } })]), { ids: ['one'], ...ALL })
        .entries[0]?.note;
    expect(noted('Wind\u0007\non the\u202e wall')).toBe('Wind\non the wall');
    expect(noted('x'.repeat(501))).toBe('x'.repeat(500));
    expect(noted(' \n ')).toBeUndefined();
  });

  it('TELL-1 what was not felt has no key', () => {
    const [bare] = responseOf(teller([entry({ id: 'one', feeling: {} })]), {
      ids: ['one'],
      ...ALL,
    }).entries;
    for (const key of ['effort', 'effortLater', 'niggle', 'warningSign', 'note', 'group'])
      expect(bare).not.toHaveProperty(key);
  });

  it('TELL-1 a name goes along in one line, whatever was pasted', () => {
    const named = (name: string) => responseOf(teller(log), { ids: [], ...ALL, name }).name;
    expect(named('Rosa\u2029from the dike')).toBe('Rosa from the dike');
    expect(named(`Rosa\u202e${'x'.repeat(90)}`)).toBe(`Rosa${'x'.repeat(56)}`);
    expect(named(' \n ')).toBeUndefined();
  });

  it('TELL-1 names the group of a session that was done with another, and both efforts', () => {
    const [two] = responseOf(teller(log), { ids: ['two'], ...ALL }).entries;
    expect(two).toMatchObject({ group: 'teal', effort: 7, effortLater: 6 });
  });

  it('TELL-1 a programme that is kept apart is called by its own id', () => {
    const apart = teller(log, { programme: { id: 'marsh-mile.2', revision: 1 } });
    expect(responseOf(apart, { ids: [], ...ALL }).programme.id).toBe('marsh-mile');
  });

  it('TELL-2 notes, niggles, warning signs and name stay here unless they were chosen', () => {
    const text = JSON.stringify(
      responseOf(teller(log), { ids: log.map(({ id }) => id), ...NOTHING_MORE }),
    );
    for (const word of [
      'note',
      'niggle',
      'knee',
      'warningSign',
      'Wind',
      'name',
      'other',
      'marsh-mile',
    ])
      expect(text).not.toContain(word);
  });

  it('TELL-2 whatever was not chosen could be anything else, and the bytes would be the same', () => {
    const disguised = (entry: LogEntry, telling: Telling, isChosen: boolean): LogEntry => {
      const { niggle, warningSign, note, ...rest } = entry.feeling;
      const hidden = {
        programme: { ...entry.programme, title: 'Another title' },
        group: { ...entry.group, name: 'Another name' },
        plan: '20 min walk',
        outcome: 'ended-early',
        covered: [],
        distanceM: 4321,
      } as const;
      if (!isChosen)
        return {
          ...entry,
          ...hidden,
          week: 50,
          target: 99,
          doneSeconds: 1,
          feeling: { effort: 9, note: 'Another note', warningSign: true, niggle: { place: 'hip' } },
        };
      return {
        ...entry,
        ...hidden,
        feeling: {
          ...rest,
          soreness: true,
          ...(telling.niggles ? (niggle ? { niggle } : {}) : { niggle: { place: 'hip' } }),
          ...(telling.warningSigns ? (warningSign ? { warningSign } : {}) : { warningSign: true }),
          ...(telling.notes ? (note ? { note } : {}) : { note: 'Another note' }),
        },
      };
    };
    fc.assert(
      fc.property(told, ({ log, telling }) => {
        const other = log.map((each) => disguised(each, telling, telling.ids.includes(each.id)));
        const [one, two] = [log, other].map((all) =>
          JSON.stringify(responseOf(teller(all), telling)),
        );
        expect(two).toBe(one);
      }),
    );
  });

  it('TELL-3 says how many sessions the leader was not told of, and nothing else of them', () => {
    const before = [{ at: EVENING - 1000, ids: ['one'] }];
    const person = { secret: '7f'.repeat(16), told: before };
    expect(responseOf(teller(log, { person }), { ids: ['two'], ...ALL }).leftOut).toBe(1);
    expect(responseOf(teller(log), { ids: [], ...ALL }).leftOut).toBe(3);
    expect(responseOf(teller(log), { ids: ['one', 'two', 'three'], ...ALL }).leftOut).toBe(0);
  });

  it('TELL-4 what was not told, or was put right since, is ticked at first', () => {
    const at = EVENING;
    const rated = { ...entry({ id: 'rated', day: 1 }), feltAt: at + 1 };
    const edited = { ...entry({ id: 'edited', day: 2 }), editedAt: at + 1 };
    const early = { ...entry({ id: 'early', day: 3 }), feltAt: at - 5 };
    const fresh = entry({ id: 'fresh', day: 4 });
    const since = { ...entry({ id: 'since', day: 5 }), feltAt: at };
    const told = [
      { at: at - 9, ids: ['early'] },
      { at, ids: ['rated', 'edited', 'early', 'since'] },
    ];
    const all = [fresh, early, edited, rated];
    expect(all.map(standingIn(told))).toEqual(['new', 'told', 'changed', 'changed']);
    expect(all.map(standingIn([...told].reverse()))).toEqual(['new', 'told', 'changed', 'changed']);
    expect(standingIn(told)(since)).toBe('told');
    expect(untold(all, told)).toEqual(['fresh', 'edited', 'rated']);
  });

  it('TELL-4 no more are ticked than one response holds', () => {
    const many = Array.from({ length: 300 }, (_, n) => entry({ id: `s${n}`, day: n }));
    expect(untold(many, [])).toHaveLength(RESPONSE_LIMITS.entries);
  });
});

describe('a response in bytes', () => {
  it('TELL-5 reads back as it was written, whatever was chosen', () => {
    fc.assert(
      fc.property(told, ({ log, telling }) => {
        const response = responseOf(teller(log), telling);
        fc.pre(response.entries.length > 0);
        expect(readResponse(bytesOf(response))).toEqual({ ok: true, value: response });
      }),
    );
  });

  it('TELL-5 is JSON in raw deflate with a preset dictionary, as Node’s zlib reads and writes it', () => {
    fc.assert(
      fc.property(told, ({ log, telling }) => {
        const response = responseOf(teller(log), telling);
        fc.pre(response.entries.length > 0);
        expect(JSON.parse(inside(bytesOf(response)))).toEqual(response);
        expect(readResponse(asSealed(JSON.stringify(response)))).toEqual({
          ok: true,
          value: response,
        });
      }),
    );
  });

  it('TELL-5 the dictionary is the one that answers were made with', () => {
    const hash = createHash('sha256').update(RESPONSE_DICTIONARY_1, 'utf8').digest('hex');
    expect(hash).toBe('6b82eb913fe263cd802b4b7cd44bbf1c14e2b0d82b3abdc56650c22549443a8f');
  });

  it('TELL-6 a response with no session, or with more than fits, is refused before it is sealed', () => {
    const sessions = (count: number, note = ''): LogEntry[] =>
      Array.from({ length: count }, (_, n) =>
        entry({ id: `s${n}`, day: n % 40, feeling: note === '' ? {} : { note } }),
      );
    const sized = (log: LogEntry[]) =>
      responseBytes(responseOf(teller(log), { ids: log.map(({ id }) => id), ...ALL }));
    expect(sized([])).toEqual({ ok: false, error: 'empty' });
    expect(sized(sessions(200)).ok).toBe(true);
    expect(sized(sessions(201))).toEqual({ ok: false, error: 'too-large' });
    // 200 notes of 500 letters of four bytes are over 256 KiB.
    expect(sized(sessions(200, '𝔸'.repeat(500)))).toEqual({ ok: false, error: 'too-large' });
    expect(sized(sessions(100, '𝔸'.repeat(500))).ok).toBe(true);
  });

  it('TELL-6 256 KiB are taken to the byte', () => {
    const response = responseOf(teller([entry({ id: 'one' })]), { ids: ['one'], ...ALL });
    const room = 256 * 1024 - Buffer.byteLength(JSON.stringify({ ...response, name: '' }));
    expect(responseBytes({ ...response, name: 'x'.repeat(room) }).ok).toBe(true);
    expect(responseBytes({ ...response, name: 'x'.repeat(room + 1) })).toEqual({
      ok: false,
      error: 'too-large',
    });
  });
});

describe('hostile content under a right seal', () => {
  const good = responseOf(teller([entry({ id: 'one', feeling: { effort: 5 } })]), {
    ids: ['one'],
    ...ALL,
    name: 'Rosa',
  });
  const [first] = good.entries;
  const read = (value: unknown) => readResponse(asSealed(JSON.stringify(value)));
  const withEntry = (part: object) => ({ ...good, entries: [{ ...first, ...part }] });
  const HOUR = 3_600_000;
  /** So far from noon of the day on which it is said to have been. */
  const startsAt = (off: number) => ({
    localDate: '2027-03-01',
    startedAt: Date.UTC(2027, 2, 1, 12) + off,
  });

  it('TELL-7 keys that are not known are dropped', () => {
    const more = {
      ...good,
      admin: true,
      entries: [{ ...first, plan: 'x', feeling: { note: 'y' } }],
    };
    expect(read(more)).toEqual({ ok: true, value: good });
    const text = JSON.stringify(good).replace('{', '{"__proto__":{"polluted":1},"constructor":1,');
    expect(readResponse(asSealed(text))).toEqual({ ok: true, value: good });
    expect('polluted' in {}).toBe(false);
  });

  it.each<[string, object]>([
    ['no format', { ...good, format: undefined }],
    ['another format', { ...good, format: 'towpath-programme/1' }],
    ['a programme id that is a path', { ...good, programme: { id: '../x', revision: 1 } }],
    ['a revision that is no whole number', { ...good, programme: { id: 'x', revision: 1.5 } }],
    ['a secret that is short', { ...good, secret: 'abc' }],
    ['a secret with markup', { ...good, secret: '<'.repeat(32) }],
    ['an empty name', { ...good, name: '  ' }],
    ['a name of 61 letters', { ...good, name: 'x'.repeat(61) }],
    ['a name in two lines', { ...good, name: 'Rosa\nRead this' }],
    ['a name that turns the writing round', { ...good, name: 'Rosa\u202e' }],
    ['a group that is no id', { ...good, group: '__proto__' }],
    ['a format in a list', { ...good, format: ['towpath-response/2'] }],
    ['a format with words before it', { ...good, format: 'my towpath-response/2' }],
    ['a format with words behind it', { ...good, format: 'towpath-response/2x' }],
    ['a secret that begins with a sign', { ...good, secret: `<${good.secret}` }],
    ['a secret that ends with one', { ...good, secret: `${good.secret}>` }],
    ['a time before the app was', { ...good, sentAt: 0 }],
    ['fewer than none left out', { ...good, leftOut: -1 }],
    ['sessions that are no list', { ...good, entries: { length: 1, 0: first } }],
    ['a session twice', { ...good, entries: [first, first] }],
    [
      '201 sessions',
      { ...good, entries: Array.from({ length: 201 }, (_, n) => ({ ...first, id: `s${n}` })) },
    ],
    ['an id that begins with a sign', withEntry({ id: '<one' })],
    ['an id that ends with one', withEntry({ id: 'one>' })],
    ['week 0', withEntry({ week: 0 })],
    ['week 53', withEntry({ week: 53 })],
    ['a session of 25 hours', withEntry({ doneSeconds: 90_000 })],
    ['half a second', withEntry({ activeSeconds: 0.5 })],
    ['an effort of 11', withEntry({ effort: 11 })],
    ['an effort in words', withEntry({ effort: '5' })],
    ['an effort that is no number', withEntry({ effort: null })],
    ['a place that is not on the body', withEntry({ niggle: { place: 'tail' } })],
    ['a severity of 4', withEntry({ niggle: { place: 'knee', severity: 4 } })],
    ['a warning sign that is a text', withEntry({ warningSign: 'yes' })],
    ['a note of 501 letters', withEntry({ note: 'x'.repeat(501) })],
    ['a note with a control character', withEntry({ note: 'a\u0007b' })],
    ['a day that is not in the calendar', withEntry({ localDate: '2027-02-30' })],
    ['a day that is not near its time', withEntry({ localDate: '2027-03-04' })],
    ['a zone with markup', withEntry({ zone: '<b>' })],
    ['a zone that begins with a sign', withEntry({ zone: '<UTC' })],
    ['a zone that ends with one', withEntry({ zone: 'UTC>' })],
    ['a start a day and a half and a moment from its noon', withEntry(startsAt(36 * HOUR + 1))],
    ['an offset of a day', withEntry({ offsetMinutes: 1440 })],
  ])('TELL-7 %s is refused', (_, value) => {
    expect(read(value)).toEqual({ ok: false, error: 'content' });
  });

  it('TELL-7 what just fits its bounds is taken', () => {
    const note = 'x'.repeat(500);
    expect(read({ ...good, name: 'x'.repeat(60) }).ok).toBe(true);
    expect(read(withEntry({ note, ...startsAt(36 * HOUR) })).ok).toBe(true);
    expect(read(withEntry({ note, ...startsAt(-36 * HOUR) })).ok).toBe(true);
  });

  it('TELL-7 what a newer version wrote is told as that', () => {
    for (const version of [2, 12, 999_999])
      expect(read({ ...good, format: `towpath-response/${version}` })).toEqual({
        ok: false,
        error: 'newer',
      });
  });

  it('TELL-7 bombs, depth and bytes that are no text are refused within their bounds', () => {
    const bomb = new Uint8Array(deflateRawSync(Buffer.alloc(50_000_000), { level: 9, dictionary }));
    expect(readResponse(bomb)).toEqual({ ok: false, error: 'too-large' });
    expect(readResponse(asSealed('['.repeat(50_000)))).toEqual({ ok: false, error: 'content' });
    const noText = new Uint8Array(deflateRawSync(Buffer.of(0xff, 0xfe), { dictionary }));
    expect(readResponse(noText)).toEqual({ ok: false, error: 'damaged' });
    expect(readResponse(new Uint8Array())).toEqual({ ok: false, error: 'damaged' });
    expect(readResponse(asSealed('null'))).toEqual({ ok: false, error: 'content' });
  });

  it('TELL-7 no bytes whatever make it throw', () => {
    fc.assert(
      fc.property(fc.uint8Array({ maxLength: 400 }), (bytes) => {
        expect(readResponse(bytes).ok).toBe(false);
      }),
    );
    fc.assert(
      fc.property(fc.json(), (text) => {
        expect(readResponse(asSealed(text))).toMatchObject({ ok: false });
      }),
    );
  });
});
