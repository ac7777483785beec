import { spawnSync } from 'node:child_process';
import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { afterAll, describe, expect, test } from 'vitest';
import { WebVTTParser } from 'webvtt-parser';
import { writeTrack } from '../../src/cli/track-files.ts';
import { type Order, readOrder } from '../../src/cli/track-order.ts';
import { readInfoFrame } from '../../src/domain/track/info-frame.ts';

const root = fileURLToPath(new URL('../../', import.meta.url));
const demo = join(root, 'src/app/demo/heron-loop.json');
const folder = mkdtempSync(join(tmpdir(), 'towpath-cli-'));
afterAll(() => rmSync(folder, { recursive: true }));

const PLAN = '5 min easy walk; 7 x (1 min walk, 2 min run); 5 min easy walk';
const programme = {
  format: 'towpath-programme/1',
  id: 'salt-marsh',
  revision: 1,
  title: 'To the hide and back',
  language: 'en',
  goal: { name: 'Hide', distanceM: 3000 },
  leader: { name: 'Imogen', sign: null, seal: null },
  groups: [{ id: 'wren', name: 'Wren', for: 'New to exercise' }],
  weeks: [
    {
      focus: 'Begin',
      effort: 50,
      timesPerWeek: { min: 2, max: 3 },
      sessions: { wren: PLAN },
    },
    {
      focus: 'Go on',
      effort: 50,
      timesPerWeek: { min: 2, max: 2 },
      sessions: { wren: ['20 min walk', '10 min walk; 3 x (1 min jog, 1 min walk); 4 min walk'] },
    },
  ],
  reminders: [],
};
const file = join(folder, 'salt-marsh.json');
writeFileSync(file, JSON.stringify(programme));

const ORDER: Order = {
  file: 'salt-marsh.json',
  week: 1,
  group: 'wren',
  session: 1,
  talk: 'usual',
  out: '.',
};

/** Run the command as a leader does, from another folder than the project's. */
function track(...args: string[]) {
  const script = join(root, 'src/cli/track.ts');
  const loader = fileURLToPath(import.meta.resolve('tsx'));
  const run = spawnSync(process.execPath, ['--import', loader, script, ...args], {
    cwd: folder,
    encoding: 'utf8',
  });
  return { code: run.status, out: run.stdout, said: run.stderr };
}

const parsedCues = (vtt: string) => {
  const { cues, errors } = new WebVTTParser().parse(
    readFileSync(join(folder, vtt), 'utf8'),
    'metadata',
  );
  expect(errors).toEqual([]);
  return cues;
};

describe('npm run track', () => {
  test('TRACK-16 writes sound and captions and prints one line of JSON with the totals', () => {
    const run = track('salt-marsh.json', '--week', '1', '--group', 'wren', '--out', 'made/here');
    expect(run).toMatchObject({ code: 0, said: '' });
    expect(run.out).toMatch(/^[^\n]+\n$/);
    const written = JSON.parse(run.out);
    // 5 + 7 x (1 + 2) + 5 min, worked by hand: common practice, no source.
    expect(written).toEqual({
      mp3: 'made/here/salt-marsh-w1-wren.mp3',
      vtt: 'made/here/salt-marsh-w1-wren.vtt',
      seconds: 1860,
      mainSeconds: 1260,
      runSeconds: 840,
      segments: 16,
    });
    const sound = readFileSync(join(folder, written.mp3));
    expect(readInfoFrame(sound)?.bytes).toBe(sound.length - 96);
    expect(readInfoFrame(sound)?.frames).toBe(((1860 + 120) * 1000) / 24);
  });

  test('TRACK-16 captions span what is heard and are read by an independent parser', () => {
    track('salt-marsh.json', '--week', '1', '--group', 'wren', '--out', '.');
    const cues = parsedCues('salt-marsh-w1-wren.vtt');
    const changes = cues.filter(({ id }) => id.startsWith('change'));
    expect(changes.map(({ startTime }) => Math.floor(startTime)).slice(0, 3)).toEqual([
      300, 360, 480,
    ]);
    expect(changes.length).toBe(15);
    expect(cues.at(-1)?.id).toMatch(/^finish/);
    expect(cues.at(-1)?.startTime).toBeGreaterThanOrEqual(1860);
  });

  test('TRACK-16 a week with one plan repeats it, a week with two has two', async () => {
    const order = { ...ORDER, session: 3 };
    const name = { mp3: 'salt-marsh-w1-wren-3.mp3', seconds: 1860 };
    expect(await writeTrack(order, folder)).toMatchObject({ ok: true, value: name });
    const second = { mp3: 'salt-marsh-w2-wren-2.mp3', segments: 8 };
    const made = await writeTrack({ ...ORDER, week: 2, session: 2 }, folder);
    expect(made).toMatchObject({ ok: true, value: second });
    const error = 'There is no session 3 in week 2: it has 2.';
    expect(await writeTrack({ ...order, week: 2 }, folder)).toEqual({ ok: false, error });
  });

  test('TRACK-16 fewer cues are heard at few than at many', async () => {
    const counts: number[] = [];
    for (const talk of ['few', 'usual', 'many'] as const) {
      await writeTrack({ ...ORDER, talk }, folder);
      counts.push(parsedCues('salt-marsh-w1-wren.vtt').length);
    }
    const [few = 0, usual = 0, many = 0] = counts;
    expect(few).toBeLessThan(usual);
    expect(usual).toBeLessThan(many);
  });

  test.each([
    [
      'no file',
      ['none.json', '--week=1', '--group=wren', '--out=.'],
      'none.json: There is no such',
    ],
    [
      'no programme',
      [`${root}package.json`, '--week=1', '--group=wren', '--out=.'],
      'not a Towpath',
    ],
    ['a week too many', [demo, '--week=7', '--group=wren', '--out=.'], 'no week 7: it has 6'],
    ['an unknown group', [demo, '--week=1', '--group=owl', '--out=.'], 'wren, dunlin'],
    ['an inherited name', [demo, '--week=1', '--group=constructor', '--out=.'], 'no group'],
    ['a file as folder', [demo, '--week=1', '--group=wren', `--out=${file}`], 'cannot be written'],
    ['nothing', [], 'Give a programme file.'],
  ])('TRACK-16 %s is told in one line, without a stack trace, and exit code 1', (_, args, says) => {
    const run = track(...args);
    expect(run.code).toBe(1);
    expect(run.out).toBe('');
    expect(run.said).toContain(says);
    expect(run.said).toMatch(/^[^\n]+\n$/);
  });
});

describe('the command line of track', () => {
  const right = ['a.json', '--week', '2', '--group', 'wren', '--out', 'x'];

  test('TRACK-16 takes what it needs, with the first session and the usual cues', () => {
    const order = { file: 'a.json', week: 2, group: 'wren', session: 1, talk: 'usual', out: 'x' };
    expect(readOrder(right)).toEqual({ ok: true, value: order });
    expect(readOrder(['--help'])).toEqual({ ok: true, value: 'help' });
  });

  test.each([
    [right.slice(1), 'Give a programme file.'],
    [[...right, 'b.json'], 'Give one programme file; "b.json" is one too many.'],
    [['a.json', '--group', 'wren', '--out', 'x'], 'Say which week: --week 1'],
    [[...right, '--week', '0'], '--week is a number from 1, not "0".'],
    [[...right, '--week', '1.5'], '--week is a number from 1, not "1.5".'],
    [['a.json', '--week', '1', '--out', 'x'], 'Say which group, by its id: --group wren'],
    [[...right, '--session', 'two'], '--session is a number from 1, not "two".'],
    [[...right, '--cues', 'loud'], '--cues is few, usual or many, not "loud".'],
    [['a.json', '--week', '1', '--group', 'wren'], 'Say which folder to write into: --out DIR'],
    [[...right, '--loud'], "Unknown option '--loud'."],
  ])('TRACK-16 says what is wrong with it: %j', (args, error) => {
    expect(readOrder(args)).toEqual({ ok: false, error });
  });
});
