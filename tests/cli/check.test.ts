import { spawnSync } from 'node:child_process';
import { mkdtempSync, rmSync, symlinkSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { afterAll, describe, expect, it } from 'vitest';
import { DEMO_PROGRAMME_TEXT } from '../../src/app/demo/demo.ts';
import { check, checkText } from '../../src/cli/check-report.ts';

const root = fileURLToPath(new URL('../..', import.meta.url));
const folder = mkdtempSync(join(tmpdir(), 'towpath-check-'));
afterAll(() => rmSync(folder, { recursive: true }));

const written = (name: string, content: string | Uint8Array): string => {
  const path = join(folder, name);
  writeFileSync(path, content);
  return path;
};

/** Runs the command as a person does. */
const run = (...args: readonly string[]) => {
  const done = spawnSync('npm', ['run', '--silent', 'check', '--', ...args], {
    cwd: root,
    encoding: 'utf8',
    timeout: 60_000,
  });
  return { status: done.status, out: done.stdout, errors: done.stderr };
};

const ONE_GROUP = {
  format: 'towpath-programme/1',
  id: 'heron-loop-spring',
  revision: 1,
  title: 'Six weeks to the Heron Loop',
  language: 'en',
  goal: { name: 'Heron Loop', distanceM: 5000 },
  leader: { name: 'Imogen', sign: null, seal: null },
  groups: [{ id: 'wren', name: 'Wren', for: 'New to exercise: all walking' }],
  weeks: [
    {
      focus: 'Find your rhythm',
      effort: 50,
      timesPerWeek: { min: 2, max: 3 },
      sessions: { wren: '5 min easy walk; 7 x (1 min walk, 2 min run); 5 min easy walk' },
    },
  ],
  reminders: ['stand-tall'],
};

describe('npm run check', () => {
  it('FILE-14 a right file is one line with its totals, and exit 0', { timeout: 60_000 }, () => {
    const { status, out, errors } = run(written('right.json', JSON.stringify(ONE_GROUP)));
    // 5 + 7 x (1 + 2) + 5 = 31 min, 7 x 3 = 21, 7 x 2 = 14: common practice, no source.
    expect(out).toBe(
      '{"ok":true,"errors":[],"warnings":[],"totals":[{"week":1,"group":"wren","session":1,"seconds":1860,"mainSeconds":1260,"runSeconds":840}]}\n',
    );
    expect(errors).toBe('');
    expect(status).toBe(0);
  });

  it('FILE-14 a wrong plan is told with path and place, and exit 1', { timeout: 60_000 }, () => {
    const text = JSON.stringify(ONE_GROUP).replace('2 min run', '2 m run');
    const { status, out, errors } = run(written('wrong.json', text));
    expect(out.trimEnd().split('\n')).toHaveLength(1);
    expect(JSON.parse(out)).toEqual({
      ok: false,
      errors: [
        {
          path: 'weeks[0].sessions.wren',
          message:
            'Line 1, column 35: “2 m” could be metres, and sessions are in time. Write 2 min.',
        },
      ],
      warnings: [],
      totals: [],
    });
    expect(errors).toBe('');
    expect(status).toBe(1);
  });

  it('FILE-14 no file, and a link to the right one, from the command itself', {
    timeout: 60_000,
  }, () => {
    const none = run(join(folder, 'none.json'));
    expect(JSON.parse(none.out).errors).toEqual([{ path: '', message: 'There is no such file.' }]);
    expect([none.status, none.errors]).toEqual([1, '']);
    const link = join(folder, 'link.json');
    symlinkSync(written('there.json', DEMO_PROGRAMME_TEXT), link);
    expect(run(link).status).toBe(0);
  });

  it('FILE-14 a relative place is meant from where the command was called', async () => {
    written('near.json', DEMO_PROGRAMME_TEXT);
    expect((await check(['near.json'], folder)).ok).toBe(true);
    expect((await check(['near.json'], root)).errors).toEqual([
      { path: '', message: 'There is no such file.' },
    ]);
  });

  it.each([
    ['no argument', [], 'Give one programme file: npm run check -- FILE'],
    ['two files', ['a.json', 'b.json'], 'Give one programme file: npm run check -- FILE'],
    ['a folder', [folder], 'This is a folder. Give a programme file.'],
    ['a binary', [process.execPath], 'The file is too large. 256 KiB is the most.'],
    [
      'bytes that are no text',
      [written('noise.bin', new Uint8Array([0xff, 0xfe, 0x00, 0xc3, 0x28]))],
      'The file is not text. A programme is JSON in UTF-8.',
    ],
    ['an empty file', [written('empty.json', '')], 'The file is empty.'],
    [
      'a picture of JSON',
      [written('cut.json', DEMO_PROGRAMME_TEXT.slice(0, 300))],
      'The file is damaged or is something else: it cannot be read as JSON.',
    ],
    [
      'a large file',
      [written('large.json', DEMO_PROGRAMME_TEXT + ' '.repeat(300_000))],
      'The file is too large. 256 KiB is the most.',
    ],
    [
      'a path under a file',
      [join(written('file.json', '{}'), 'below')],
      'The file cannot be read.',
    ],
  ])('FILE-14 %s is answered in one sentence', async (_name, args, message) => {
    expect(await check(args, folder)).toEqual({
      ok: false,
      errors: [{ path: '', message }],
      warnings: [],
      totals: [],
    });
  });

  it('FILE-14 weeks and sessions count from 1, lists give one total per session', () => {
    const { totals, ok, warnings } = checkText(DEMO_PROGRAMME_TEXT);
    expect([ok, warnings]).toEqual([true, []]);
    expect(totals).toHaveLength(6 * 4 + 4);
    expect(totals.filter(({ week, group }) => week === 3 && group === 'dunlin')).toEqual([
      // 5 + 10 x 2.5 + 5 = 35, running 12.5; 5 + 5 x 5 + 5 = 35, running 10.
      { week: 3, group: 'dunlin', session: 1, seconds: 2100, mainSeconds: 1500, runSeconds: 750 },
      { week: 3, group: 'dunlin', session: 2, seconds: 2100, mainSeconds: 1500, runSeconds: 600 },
    ]);
  });

  it('FILE-14 warnings do not make a file wrong', () => {
    const text = JSON.stringify(ONE_GROUP).replace(/"5 min easy walk; [^"]*"/, '"20 min run"');
    const report = checkText(text);
    expect(report.ok).toBe(true);
    expect(report.warnings).toEqual([
      {
        path: 'weeks[0].sessions.wren',
        message: 'This does not begin with walking. Five minutes or more warm the body up.',
      },
      {
        path: 'weeks[0].sessions.wren',
        message: 'This does not end with walking. Five minutes or more let the body settle.',
      },
    ]);
  });
});
