import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { DEMO_PROGRAMME_TEXT } from '../../../src/app/demo/demo.ts';
import { programmeProblem } from '../../../src/copy/programme.ts';
import { PROGRAMME_CODES } from '../../../src/domain/programme/problem.ts';
import { PROGRAMME_MAX_BYTES } from '../../../src/domain/programme/programme.ts';
import { readProgramme } from '../../../src/domain/programme/read.ts';
import { CROSSED, changed, demo, RIGHT, WRONG } from './files.ts';

const problems = (text: string) => {
  const result = readProgramme(text);
  return result.ok ? [] : result.error;
};
const sentences = (text: string) => problems(text).map(programmeProblem);

describe('reading a programme file', () => {
  it('FILE-1 the text is kept to the byte, unknown keys and spaces included', () => {
    const text = `\ufeff${JSON.stringify({ ...demo(), tide: 'high' }, null, 3)}\n\n`;
    const result = readProgramme(text);
    expect(result).toMatchObject({
      ok: true,
      value: { text, title: 'Six weeks to the Heron Loop' },
    });
    expect(result.ok && 'tide' in result.value).toBe(false);
  });

  it.each(RIGHT)('FILE-1 %s may be %j', (path, value) => {
    expect(problems(JSON.stringify(changed(path, value)))).toEqual([]);
  });

  it('FILE-1 keys that are not there are null or absent, as the reader promises', () => {
    const result = readProgramme(JSON.stringify(changed('leader', { name: 'Imogen' })));
    expect(result).toMatchObject({
      ok: true,
      value: { leader: { name: 'Imogen', sign: null, seal: null } },
    });
    const bare = readProgramme(JSON.stringify(changed('startDate', undefined)));
    expect(bare.ok && 'startDate' in bare.value).toBe(false);
  });

  it('FILE-2 256 KiB is read, a byte more is not', () => {
    const room = PROGRAMME_MAX_BYTES - new TextEncoder().encode(DEMO_PROGRAMME_TEXT).length;
    expect(problems(DEMO_PROGRAMME_TEXT + ' '.repeat(room))).toEqual([]);
    expect(sentences(DEMO_PROGRAMME_TEXT + ' '.repeat(room + 1))).toEqual([
      'The file is too large. 256 KiB is the most.',
    ]);
  });

  it('FILE-2 bytes count, not characters', () => {
    const text = JSON.stringify(changed('tide', 'é'.repeat(140_000)));
    expect(text.length).toBeLessThan(PROGRAMME_MAX_BYTES);
    expect(problems(text).map(({ code }) => code)).toEqual(['file-large']);
  });

  it.each([
    ['', 'The file is empty.'],
    [' \n', 'The file is empty.'],
    ['{"format":', 'The file is damaged or is something else: it cannot be read as JSON.'],
    ['BEGIN:VCALENDAR', 'The file is damaged or is something else: it cannot be read as JSON.'],
    [
      `${'['.repeat(100_000)}`,
      'The file is damaged or is something else: it cannot be read as JSON.',
    ],
    ['null', 'This is not a Towpath programme. Its format would be towpath-programme/1.'],
    ['[]', 'This is not a Towpath programme. Its format would be towpath-programme/1.'],
    [
      '"towpath-programme/1"',
      'This is not a Towpath programme. Its format would be towpath-programme/1.',
    ],
    [
      '{"format":"towpath-log/1"}',
      'This is not a Towpath programme. Its format would be towpath-programme/1.',
    ],
    ['{"format":1}', 'This is not a Towpath programme. Its format would be towpath-programme/1.'],
    [
      '{"format":"towpath-programme/2"}',
      'This programme was made by a newer Towpath. Update this one, then open the file again.',
    ],
  ])('FILE-3 %.40j is refused in one sentence', (text, sentence) => {
    expect(sentences(text)).toEqual([sentence]);
  });

  it('FILE-3 no text makes the reader throw, however deep or odd it is', () => {
    const deep = `{"format":"towpath-programme/1","x":${'['.repeat(100_000)}${']'.repeat(100_000)}}`;
    expect(readProgramme(deep).ok).toBe(false);
    fc.assert(
      fc.property(
        fc.oneof(
          fc.string({ unit: 'binary' }),
          fc.json(),
          fc.jsonValue().map((value) => JSON.stringify({ ...demo(), weeks: value })),
        ),
        (text) => {
          const found = problems(text);
          expect(found.length).toBeGreaterThan(0);
          for (const problem of found) expect(programmeProblem(problem).length).toBeGreaterThan(10);
        },
      ),
      { numRuns: 300 },
    );
  });

  it.each(WRONG)('FILE-4 %s as %.60j is refused as %s', (path, value, code, told) => {
    const found = problems(JSON.stringify(changed(path, value)));
    expect(found.map((problem) => [problem.path, problem.code])).toContainEqual([told, code]);
  });

  it('FILE-4 every problem is told at once, so that a file is mended in one go', () => {
    const file = { ...demo(), title: '', revision: 0, reminders: [5] };
    expect(sentences(JSON.stringify(file))).toEqual([
      'revision: This needs a whole number from 1 to 1000000.',
      'title: This text is empty.',
      'reminders[0]: This needs text in quotes.',
    ]);
  });

  it('FILE-4 a file that is wrong everywhere is told in fifty problems at most', () => {
    const weeks = Array.from({ length: 52 }, () => ({ focus: 5, effort: 'x' }));
    expect(problems(JSON.stringify({ ...demo(), weeks }))).toHaveLength(50);
  });

  it.each(CROSSED)(
    'FILE-5, FILE-6, FILE-7 %s as %.60j is refused as %s',
    (path, value, code, told) => {
      const found = problems(JSON.stringify(changed(path, value)));
      expect(found.map((problem) => [problem.path, problem.code])).toContainEqual([told, code]);
    },
  );

  it('FILE-5 a group without a session in a week is told by name', () => {
    expect(sentences(JSON.stringify(changed('weeks.3.sessions.wren', undefined)))).toEqual([
      'weeks[3].sessions.wren: The group wren has no session in this week.',
    ]);
    expect(sentences(JSON.stringify(changed('weeks.3.sessions.puffin', '5 min walk')))).toEqual([
      'weeks[3].sessions.puffin: No group has this id. The groups are wren, dunlin, curlew, swift.',
    ]);
  });

  it('FILE-6 days that are not in the calendar are told, by the Gregorian rule', () => {
    // ISO 8601: 2028 is a leap year, 2027 is not, 2100 is not. 2028-02-28 is a Monday.
    expect(problems(JSON.stringify(changed('goal.date', '2028-02-29')))).toEqual([]);
    for (const date of ['2027-02-29', '2100-02-29', '2027-13-01', '2027-00-10', '2027-04-00'])
      expect(problems(JSON.stringify(changed('goal.date', date))).map(({ code }) => code)).toEqual([
        'date',
      ]);
  });

  it('FILE-6 the start is a Monday by ISO 8601', () => {
    // ISO 8601 week dates: 2008-12-29 is 2009-W01-1, a Monday; 2020-12-31 is W53-4.
    expect(problems(JSON.stringify(changed('startDate', '2008-12-29')))).toEqual([]);
    for (const date of ['2020-12-31', '2021-01-01', '2026-12-31', '2027-03-07'])
      expect(sentences(JSON.stringify(changed('startDate', date)))).toEqual([
        'startDate: The start is not a Monday. Weeks begin on Monday.',
      ]);
  });

  it('FILE-7 a plan is refused with its path and its place in the plan', () => {
    const text = JSON.stringify(changed('weeks.1.sessions.wren', '5 min walk;\n 10 min wlak'));
    expect(problems(text)).toEqual([
      {
        code: 'plan',
        path: 'weeks[1].sessions.wren',
        plan: {
          code: 'unknown-activity',
          place: { line: 2, column: 9, offset: 20, length: 4 },
          found: 'wlak',
          detail: { near: 'walk' },
        },
      },
    ]);
    expect(sentences(text)).toEqual([
      'weeks[1].sessions.wren: Line 2, column 9: “wlak” is not an activity here. Did you mean walk?',
    ]);
  });

  it('FILE-8 hostile keys change nothing and are unknown groups at most', () => {
    const text = DEMO_PROGRAMME_TEXT.replace(
      '{"format"',
      '{"__proto__":{"admin":true,"title":"No"},"constructor":{"prototype":{"admin":true}},"format"',
    );
    const result = readProgramme(text);
    expect(result).toMatchObject({ ok: true, value: { title: 'Six weeks to the Heron Loop' } });
    expect(({} as { admin?: boolean }).admin).toBeUndefined();
    const inside = DEMO_PROGRAMME_TEXT.replace(
      '"sessions":{',
      '"sessions":{"__proto__":"5 min walk",',
    );
    expect(problems(inside).map(({ path, code }) => [path, code])).toEqual([
      ['weeks[0].sessions.__proto__', 'group-unknown'],
    ]);
  });

  it('FILE-8 a group may be called like a property of every object', () => {
    const text = DEMO_PROGRAMME_TEXT.replaceAll('"wren"', '"constructor"');
    const result = readProgramme(text);
    expect(result.ok && Object.hasOwn(result.value.weeks[0]?.sessions ?? {}, 'constructor')).toBe(
      true,
    );
    const absent = JSON.parse(text);
    delete absent.weeks[2].sessions.constructor;
    expect(problems(JSON.stringify(absent)).map(({ path, code }) => [path, code])).toEqual([
      ['weeks[2].sessions.constructor', 'sessions-missing'],
    ]);
  });

  it('FILE-9 names and texts with characters that cannot be seen are refused', () => {
    const places = ['title', 'goal.name', 'leader.name', 'groups.0.name', 'weeks.0.focus'];
    for (const letter of [
      '\u0000',
      '\u0007',
      '\n',
      '\u007f',
      '\u009b',
      '\u061c',
      '\u200e',
      '\u202e',
      '\u2067',
      '\ud800',
    ])
      for (const place of places) {
        const text = JSON.stringify(changed(place, `Heron${letter}Loop`));
        expect(problems(text).map(({ code }) => code)).toEqual(['bad-character']);
      }
    // A joiner makes one picture of two, as in a family: it is seen.
    expect(problems(JSON.stringify(changed('title', 'Loop 👩\u200d👧')))).toEqual([]);
  });

  it('FILE-9 a path never shows what cannot be seen', () => {
    const text = DEMO_PROGRAMME_TEXT.replace(
      '"sessions":{',
      '"sessions":{"a\u202eb\\u0000":"5 min walk",',
    );
    expect(problems(text)[0]?.path).toBe('weeks[0].sessions["a\\u202eb\\u0000"]');
  });

  it('FILE-11 one plan stands for the week, a list for its sessions in order', () => {
    const one = readProgramme(JSON.stringify(changed('weeks.0.sessions.wren', '5 min walk')));
    const list = readProgramme(
      JSON.stringify(changed('weeks.0.sessions.wren', ['5 min walk', '6 min walk'])),
    );
    expect(one.ok && one.value.weeks[0]?.sessions.wren?.map(({ text }) => text)).toEqual([
      '5 min walk',
    ]);
    expect(list.ok && list.value.weeks[0]?.sessions.wren?.map(({ text }) => text)).toEqual([
      '5 min walk',
      '6 min walk',
    ]);
  });

  it('FILE-4 every code has been shown with its sentence', () => {
    const files = [...WRONG, ...CROSSED].map(([path, value]) =>
      JSON.stringify(changed(path, value)),
    );
    const texts = [
      ...files,
      '',
      '{',
      '[]',
      '{"format":"towpath-programme/9"}',
      ' '.repeat(300_000),
    ];
    const found = texts.flatMap((text) => problems(text));
    expect(
      PROGRAMME_CODES.filter((code) => !found.some((problem) => problem.code === code)),
    ).toEqual([]);
    for (const problem of found) expect(programmeProblem(problem)).toMatch(/^.{12,400}[.?]$/s);
  });
});
