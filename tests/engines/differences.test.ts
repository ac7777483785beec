import { afterAll, expect, it } from 'vitest';
import { eachEngine } from '../drivers/engines/each.ts';
import { ENGINES } from '../drivers/engines/visit.ts';
import { read } from '../drivers/tree.ts';

/** What the table of the README calls each thing that not every engine can do. */
const WHAT = {
  vibrates: 'Vibrates',
  awake: 'Keeps the screen on',
  shares: 'Hands a file to another app',
  installs: 'Offers to put it on the home screen itself',
  controls: 'Buttons on the lock screen',
  keeps: 'Under a driver, its profile outlives the browser',
} as const;

/** In the page: what this engine says that it can do. */
function abilities(): Omit<Record<keyof typeof WHAT, boolean>, 'keeps'> {
  const file = new File(['x'], 'x.mp3', { type: 'audio/mpeg' });
  return {
    vibrates: typeof navigator.vibrate === 'function',
    awake: 'wakeLock' in navigator,
    shares: navigator.canShare?.({ files: [file] }) ?? false,
    installs: 'onbeforeinstallprompt' in window,
    controls: 'mediaSession' in navigator,
  };
}

const seen: Record<string, Record<keyof typeof WHAT, boolean>> = {};

eachEngine('ENG-7 what it can do is asked of it', async (visit) => {
  const { site, engine } = visit;
  await visit.person.tab.goto(site.url);
  const able = await visit.person.tab.run(abilities);
  await visit.person.tab.run(() => localStorage.setItem('left', 'here'));
  await visit.close();
  await (await visit.open()).tab.goto(site.url);
  const left = await visit.person.tab.run(() => localStorage.getItem('left'));
  seen[engine.name] = { ...able, keeps: left === 'here' };
  expect(left === 'here').toBe(engine.keepsProfile);
});

it('ENG-7 the README says of each engine what was seen, and what not all can do', () => {
  const part = read('README.md').split('## In three engines')[1]?.split('\n## ')[0] ?? '';
  const rows = [...part.matchAll(/^\| (.+) \|$/gm)].map((row) => (row[1] ?? '').split(' | '));
  expect(rows[0]?.slice(1, 4)).toEqual(ENGINES.map(({ name }) => name));
  const keys = Object.keys(WHAT) as (keyof typeof WHAT)[];
  const wanted = keys.map((key) => [
    WHAT[key],
    ...ENGINES.map(({ name }) => (seen[name]?.[key] ? 'yes' : 'no')),
  ]);
  const uneven = wanted.filter(([, ...answers]) => answers.includes('no'));
  expect(rows.slice(1).map((row) => row.slice(0, 4))).toEqual(uneven);
  expect(rows.every((row) => row.length === 5 && (row[4] ?? '').length > 3)).toBe(true);
  expect(part).toContain('None of them is a phone');
});

afterAll(() => console.log(JSON.stringify(seen)));
