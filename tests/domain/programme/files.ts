import { DEMO_PROGRAMME_TEXT } from '../../../src/app/demo/demo.ts';

export type Json = null | boolean | number | string | Json[] | { [key: string]: Json };

/** The demo as plain data, fresh each time, to be changed by a test. */
export const demo = (): { [key: string]: Json } => JSON.parse(DEMO_PROGRAMME_TEXT);

/** Set or (with undefined) take away what a path such as `goal.name` or `weeks.0.focus` leads to. */
export function changed(path: string, value: Json | undefined): Json {
  const file = demo();
  const keys = path.split('.');
  const last = keys.pop() ?? '';
  let at: Json = file;
  for (const key of keys) at = (at as { [key: string]: Json })[key] as Json;
  if (value === undefined) delete (at as { [key: string]: Json })[last];
  else (at as { [key: string]: Json })[last] = value;
  return file;
}

type Row = readonly [path: string, value: Json | undefined, code: string, told?: string];

/** A path as `changed` takes it, the value there, the code, and the path that the reader tells. */
export type Wrong = readonly [path: string, value: Json | undefined, code: string, told: string];

const rows = (table: readonly Row[]): readonly Wrong[] =>
  table.map(([path, value, code, told]) => [path, value, code, told ?? path]);

const long = (n: number): string => 'x'.repeat(n);
const group = { id: 'a', name: 'A', for: '' };

/** What a schema can say as well. */
export const WRONG: readonly Wrong[] = rows([
  ['id', undefined, 'missing'],
  ['id', 5, 'type'],
  ['id', 'Heron Loop', 'id'],
  ['id', '-heron', 'id'],
  ['id', '../etc', 'id'],
  ['id', long(65), 'id'],
  ['revision', 0, 'number'],
  ['revision', 1.5, 'number'],
  ['revision', '1', 'type'],
  ['revision', 1_000_001, 'number'],
  ['title', undefined, 'missing'],
  ['title', '', 'text-empty'],
  ['title', '  ', 'text-empty'],
  ['title', long(121), 'text-long'],
  ['title', 'Six weeks\nto the Loop', 'bad-character'],
  ['title', 'Six \u202eweeks', 'bad-character'],
  ['title', ['Six'], 'type'],
  ['language', 'english please', 'language'],
  ['language', '', 'language'],
  ['startDate', '2027-3-1', 'date'],
  ['startDate', '2027-02-30', 'date'],
  ['startDate', '01.03.2027', 'date'],
  ['startDate', null, 'type'],
  ['startDate', 20270301, 'type'],
  ['goal', undefined, 'missing'],
  ['goal', null, 'type'],
  ['goal', 'Heron Loop', 'type'],
  ['goal.name', undefined, 'missing'],
  ['goal.name', long(81), 'text-long'],
  ['goal.distanceM', '5000', 'type'],
  ['goal.distanceM', 0, 'amount'],
  ['goal.distanceM', 1_000_001, 'amount'],
  ['goal.date', '2027-04-31', 'date'],
  ['leader', undefined, 'missing'],
  ['leader.name', '\u0007Imogen', 'bad-character'],
  ['leader.name', 7, 'type'],
  ['leader.sign', 5, 'type'],
  ['leader.sign', 'short', 'key'],
  ['leader.seal', `${long(60)}=`, 'key'],
  ['groups', [], 'list'],
  ['groups', {}, 'type'],
  ['groups', Array.from({ length: 9 }, (_, n) => ({ ...group, id: `g${n}` })), 'list'],
  ['groups.0', 'wren', 'type', 'groups[0]'],
  ['groups.1.id', 'Dunlin!', 'id', 'groups[1].id'],
  ['groups.1.name', undefined, 'missing', 'groups[1].name'],
  ['groups.1.name', ' ', 'text-empty', 'groups[1].name'],
  ['groups.1.for', long(201), 'text-long', 'groups[1].for'],
  ['weeks', [], 'list'],
  ['weeks', 'six', 'type'],
  ['weeks.2.focus', undefined, 'missing', 'weeks[2].focus'],
  ['weeks.2.focus', 'a\u0000b', 'bad-character', 'weeks[2].focus'],
  ['weeks.2.effort', 101, 'number', 'weeks[2].effort'],
  ['weeks.2.effort', -1, 'number', 'weeks[2].effort'],
  ['weeks.2.effort', '50%', 'type', 'weeks[2].effort'],
  ['weeks.2.timesPerWeek', 3, 'type', 'weeks[2].timesPerWeek'],
  ['weeks.2.timesPerWeek.min', 0, 'number', 'weeks[2].timesPerWeek.min'],
  ['weeks.2.timesPerWeek.max', 8, 'number', 'weeks[2].timesPerWeek.max'],
  ['weeks.2.timesPerWeek.max', undefined, 'missing', 'weeks[2].timesPerWeek.max'],
  ['weeks.2.together', 0, 'number', 'weeks[2].together'],
  ['weeks.2.together', '1', 'type', 'weeks[2].together'],
  ['weeks.2.sessions', undefined, 'missing', 'weeks[2].sessions'],
  ['weeks.2.sessions', [], 'type', 'weeks[2].sessions'],
  ['weeks.2.sessions.wren', 5, 'type', 'weeks[2].sessions.wren'],
  ['weeks.2.sessions.wren', [], 'list', 'weeks[2].sessions.wren'],
  ['weeks.2.sessions.wren', ['5 min walk', 5], 'type', 'weeks[2].sessions.wren'],
  [
    'weeks.2.sessions.wren',
    Array.from({ length: 8 }, () => '5 min walk'),
    'list',
    'weeks[2].sessions.wren',
  ],
  ['weeks.2.sessions.wren', '', 'plan', 'weeks[2].sessions.wren'],
  ['weeks.2.sessions.wren', '5 min walk; \u202e5 min run', 'plan', 'weeks[2].sessions.wren'],
  ['weeks.2.sessions.wren', `5 min walk${' '.repeat(2000)}`, 'plan', 'weeks[2].sessions.wren'],
  ['reminders', undefined, 'missing'],
  ['reminders', 'stand-tall', 'type'],
  ['reminders', Array.from({ length: 51 }, () => 'stand-tall'), 'list'],
  ['reminders.1', '', 'text-empty', 'reminders[1]'],
  ['reminders.1', long(201), 'text-long', 'reminders[1]'],
  ['reminders.1', 'Wave \u2066at the herons', 'bad-character', 'reminders[1]'],
  ['change', 5, 'type'],
  ['change', long(501), 'text-long'],
  ['change', 'a\u001bb', 'bad-character'],
]);

/** What a schema cannot say: how one part fits another, and what a plan says. */
export const CROSSED: readonly Wrong[] = rows([
  ['startDate', '2027-03-02', 'monday'],
  ['goal.date', '2027-02-28', 'date-order'],
  ['groups.1.id', 'wren', 'group-twice', 'groups[1].id'],
  ['weeks.3.timesPerWeek.max', 1, 'times-order', 'weeks[3].timesPerWeek.max'],
  ['weeks.3.together', 4, 'together', 'weeks[3].together'],
  ['weeks.3.sessions.puffin', '5 min walk', 'group-unknown', 'weeks[3].sessions.puffin'],
  ['weeks.3.sessions.wren', undefined, 'sessions-missing', 'weeks[3].sessions.wren'],
  ['weeks.3.sessions.wren', '5 m walk', 'plan', 'weeks[3].sessions.wren'],
  [
    'weeks.3.sessions.wren',
    ['5 min walk', '5 min walk; 5 min wlak'],
    'plan',
    'weeks[3].sessions.wren[1]',
  ],
]);

/** Changes after which the file is still right. */
export const RIGHT: readonly (readonly [path: string, value: Json | undefined])[] = [
  ['startDate', undefined],
  ['goal.date', undefined],
  ['leader.sign', undefined],
  ['leader.seal', undefined],
  ['leader.seal', 'B'.repeat(87)],
  ['weeks.0.together', undefined],
  ['change', 'Week 3 is easier.\nThe rest is as it was.'],
  ['language', 'en-GB'],
  ['title', 'Zes weken: d’été, 沼地 🐦'],
  ['title', '🐦'.repeat(120)],
  ['reminders', []],
  ['weeks.0.focus', ''],
  ['weeks.0.effort', 0],
  ['weeks.0.sessions.wren', ['5 min walk', '10 min walk', '15 min walk']],
  ['weeks.0.sessions.wren', '5 min walk\n10 min brisk walk\r\n5 min walk'],
  ['weather', { wind: 'westerly' }],
  ['groups.0.colour', 'reed'],
  ['goal.distanceM', 1],
  ['goal.distanceM', 1609.344],
];
