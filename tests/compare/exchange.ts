import fc from 'fast-check';
import type { Acceptance, Kept } from '../../src/domain/exchange/decide.ts';
import { deflate } from '../../src/domain/exchange/deflate.ts';
import { ANSWER, JOIN, joinLink, partLinks } from '../../src/domain/exchange/link.ts';
import { encodeAnswer } from '../../src/domain/exchange/packet.ts';
import { readProgramme } from '../../src/domain/programme/read.ts';
import { logs, teller, tellings } from '../drivers/exchange/answers.ts';
import { marshProgramme } from '../drivers/exchange/programmes.ts';
import { somePauses } from '../drivers/records/entries.ts';
import { KEYS, phone } from '../drivers/records/phones.ts';
import { outcomes } from './outcomes.ts';

type Rules = typeof import('../../src/domain/exchange/restore.ts') &
  typeof import('../../src/domain/exchange/backup.ts') &
  typeof import('../../src/domain/exchange/backup-read.ts') &
  typeof import('../../src/domain/exchange/find.ts') &
  typeof import('../../src/domain/exchange/find-answers.ts') &
  typeof import('../../src/domain/exchange/tell.ts') &
  typeof import('../../src/domain/exchange/response-bytes.ts') &
  typeof import('../../src/domain/exchange/decide.ts') &
  typeof import('../../src/domain/exchange/compose.ts') &
  typeof import('../../src/domain/exchange/planned.ts') &
  typeof import('../../src/domain/exchange/log-table.ts') &
  typeof import('../../src/domain/exchange/link.ts') &
  typeof import('../../src/domain/exchange/deflate.ts');

const AT = Date.UTC(2027, 3, 12, 18);
const PROGRAMME = readProgramme(JSON.stringify(marshProgramme(6)));
const BASE = 'https://club.example/app/';

/** Pieces of a chat: answers in links and alone, in parts, broken and quoted, and what looks like one. */
const code = fc
  .uint8Array({ minLength: 30, maxLength: 700 })
  .map((bytes) => encodeAnswer(Uint8Array.of(4, ...bytes)));
const piece = fc.oneof(
  code,
  code.map((each) => joinLink(BASE, each, ANSWER)),
  code.map((each) => joinLink(BASE, each, JOIN)),
  fc.tuple(code, fc.integer({ min: 2, max: 4 }), fc.nat(3)).map(([each, count, left]) =>
    partLinks(BASE, each, count, ANSWER)
      .filter((_, n) => n !== left)
      .join(' '),
  ),
  fc
    .tuple(code, fc.integer({ min: 20, max: 90 }), fc.constantFrom('', '> ', '| ', '> > '))
    .map(([each, length, before]) =>
      (joinLink(BASE, each, ANSWER).match(new RegExp(`.{1,${length}}`, 'g')) ?? []).join(
        `\n${before}`,
      ),
    ),
  fc.constantFrom(
    '.',
    '..',
    ' ',
    '\n',
    '\n\n',
    '>',
    '> ',
    '|',
    '=',
    '\u2014',
    '/answer/',
    'AQ',
    'AR',
  ),
  fc.string({ maxLength: 40, unit: 'binary' }),
  fc.string({ maxLength: 2000 }).map((text) => text.repeat(3)),
);
const chat = fc.array(piece, { maxLength: 12 }).map((pieces) => pieces.join(''));

const key = fc.constantFrom(null, ...KEYS, 'C'.repeat(44));
const sender = fc.record({
  id: fc.constantFrom('marsh', 'weir'),
  revision: fc.integer({ min: 1, max: 3 }),
  text: fc.constantFrom('a', 'b'),
  key,
  was: fc.subarray([...KEYS]),
});
const kept: fc.Arbitrary<readonly Kept[]> = fc
  .array(fc.record({ sender, retired: fc.subarray([...KEYS]) }), { maxLength: 3 })
  .map((list) =>
    list.map(({ sender: { was: _, ...rest }, retired }, n) => ({
      ...rest,
      retired,
      local: n === 0 ? rest.id : `${rest.id}.${n + 1}`,
    })),
  );

/** What a file may have come to on its way. */
const damage = fc.array(
  fc.tuple(fc.nat(), fc.nat(30), fc.oneof(fc.constant(''), fc.string({ maxLength: 8 }))),
  { maxLength: 2 },
);
const damaged = (text: string, marks: readonly (readonly [number, number, string])[]): string =>
  marks.reduce((now, [at, length, put]) => {
    const from = at % (now.length + 1);
    return now.slice(0, from) + put + now.slice(from + length);
  }, text);

/** What comes in and goes out: phones restored, backups, answers in chats, responses, programmes, plans for days. */
export const exchange = outcomes({
  parts: [
    'exchange/restore',
    'exchange/backup',
    'exchange/backup-read',
    'exchange/find',
    'exchange/find-answers',
    'exchange/tell',
    'exchange/response-bytes',
    'exchange/decide',
    'exchange/compose',
    'exchange/planned',
    'exchange/log-table',
    'exchange/link',
    'exchange/deflate',
  ],
  inputs: fc.record({
    here: phone,
    file: phone,
    damage,
    chat,
    cut: fc.nat(),
    told: logs.chain((log) => fc.tuple(fc.constant(log), tellings(log))),
    sender,
    kept,
    choice: fc.constantFrom<Acceptance>('keep', 'keep-apart', 'take-over'),
    days: fc.array(fc.integer({ min: -1, max: 9 }), { maxLength: 6 }),
    pauses: somePauses,
    limit: fc.nat(400),
  }),
  of(rules: Rules, { here, file, chat: text, told: [log, telling], ...more }) {
    const written = rules.writeBackup(file, 'words', AT);
    const whole = damaged(written, more.damage);
    const finder = rules.createAnswerFinder();
    const from = more.cut % (text.length + 1);
    const found = [
      ...finder.push(text.slice(0, from)),
      ...finder.push(text.slice(from)),
      ...finder.end(),
      ...finder.push(text),
      ...finder.end(),
      ...finder.finish(),
    ];
    const response = rules.responseOf(teller(log), telling);
    const bytes = rules.responseBytes(response);
    const decision = rules.decide(more.sender, more.kept);
    const taken = more.kept.map(({ local }) => local);
    return [
      rules.restore(here, file),
      rules.restore(here, file, { vouched: { [KEYS[0] ?? '']: [KEYS[1] ?? ''] } }),
      written,
      rules.readBackup(whole),
      found,
      rules.findIn(text),
      rules.isLocalAddress(text),
      response,
      bytes,
      bytes.ok && rules.readResponse(bytes.value),
      rules.inflate(deflate(new TextEncoder().encode(text)), more.limit),
      decision,
      decision.about && rules.placeOf(more.sender, decision, more.choice, taken),
      rules.logTable(log),
      rules.outgoingText(JSON.stringify(marshProgramme(1)), { revision: 2, change: text }),
      PROGRAMME.ok &&
        rules.plannedSessions({
          programme: PROGRAMME.value,
          group: 'wren',
          anchor: { monday: '2027-03-01', week: 1 },
          days: more.days,
          from: '2027-03-03',
          pauses: more.pauses,
          done: new Set(['1.2']),
        }),
    ];
  },
});
