import type { LeadNow } from '../domain/lead/lead-at.ts';
import type { LeadGroup, Voice } from '../domain/lead/lead-plan.ts';
import { lower } from './grammar.ts';

/** Choosing who is led, before the day's session. */
export const leadDay = {
  title: 'Lead it together',
  back: 'All weeks',
  which: 'Which session',
  week: 'Week',
  weekName: (n: number, focus: string): string =>
    focus === '' ? `Week ${n}` : `Week ${n}: ${focus}`,
  session: 'Session',
  sessionName: (n: number, together: boolean): string =>
    together ? `Session ${n}, done together` : `Session ${n}`,
  who: 'Who is here',
  whoHelp: 'A number is how the voice calls a group. Names are shown, not spoken.',
  here: (number: number, name: string): string => `Group ${number}, ${name}`,
  noPlan: 'No session here that can be read',
  starts: (name: string): string => `When ${name} starts`,
  start: (minutes: number): string => (minutes === 0 ? 'at once' : `${minutes} min later`),
  voice: (name: string): string => `How ${name} is told`,
  voices: {
    words: 'in words',
    tone: 'its own tone',
    silent: 'only on the screen',
  } satisfies Record<Voice, string>,
  stagger: 'Stagger by 2 minutes',
  atOnce: 'All at once',
  nobody: 'Tick at least one group.',
  apart: (minutes: string): string =>
    `The groups do not finish together: the last is done ${minutes} after the first.`,
  ends: (group: LeadGroup, at: string): string => `${group.name} after ${at}`,
  sound: 'For a loudspeaker',
  tick: 'A soft tick in long quiet',
  tickHelp: 'Some loudspeakers switch off when nothing is heard for minutes. It keeps them on.',
  soundWords:
    'Other sound on this device will stop. The phone may lock: what is heard goes on, and the buttons of the lock screen hold everyone and go on.',
  silentWords:
    'Without sound: you tell the groups, and this screen tells you. It is kept on, which takes battery.',
  goSilent: 'Lead without sound',
  goSound: 'Lead with sound',
  begin: 'Start all groups',
  beginSilent: 'Start without sound',
  list: 'Attendance list',
  listFirst: 'Who came? Tick them off before you start, or afterwards.',
  ownUnderWay: 'A session of your own is under way on this device. End it before you lead.',
  cutOff: {
    title: 'Leading was cut off',
    moving:
      'The page was closed while you led. Your groups went on without it: go on where they are now by the clock.',
    holding: (at: string): string =>
      `The page was closed while everyone was on hold, since ${at}. Go on where they stood.`,
    goOn: (place: string): string => `Go on at ${place}`,
    leave: 'It is over',
  },
} as const;

/** A short word before the start. Common practice of leading groups outdoors, no source. */
export const leadCare = {
  title: 'Before you start them',
  points: [
    'Walk the loop in your mind: where is traffic, where is ice or mud, where is it dark?',
    'In heat, a storm warning or smoke: shorter, gentler, or another day.',
    'Who carries a charged phone, and who knows first aid? Tell everyone. Know how you would say where you are.',
    'Count the people now and at the end. Nobody goes home without telling you.',
    'Everyone may walk when the voice says run, and stop when something hurts.',
  ],
  rules:
    'The rules of the place, of your club and its insurer come first, and so does what a doctor or a qualified coach told someone.',
} as const;

/** While groups are led. */
export const leading = {
  title: 'Leading',
  sub: (week: number, session: number): string => `Week ${week}, session ${session}`,
  gone: (at: string, total: string): string => `${at} of ${total}`,
  groups: 'All groups',
  group: (number: number, name: string): string => `${number} ${name}`,
  ends: (at: string): string => `ends ${at}`,
  ended: (at: string): string => `ended ${at}`,
  waits: 'WAITS',
  startsIn: (time: string): string => `starts in ${time}`,
  done: 'DONE',
  hold: 'HOLD',
  wait: 'WAIT',
  /** What a hold waits with: "then RUN, 0:48 left of it". */
  heldAt: (activity: string, time: string): string =>
    `then ${activity.toUpperCase()}, ${time} left of it`,
  first: (activity: string, length: string): string => `${activity.toUpperCase()} ${length}`,
  after: (time: string): string => `after ${time}`,
  startsLater: (time: string): string => `starts ${time} after you go on`,
  next: (time: string, what: string, length: string): string =>
    `${time} left, then ${what.toUpperCase()} ${length}`,
  last: (time: string): string => `${time} left, then done`,
  holdAll: 'Hold all',
  goOn: 'Go on',
  wrong: 'Something is wrong',
  end: 'End for all groups',
  endAsk: 'End for all groups? Nothing is kept of leading.',
  thenLine: (groups: string): string => `then ${lower(groups)}`,
  held: 'Everyone is on hold.',
  strips: 'The whole way',
  over: {
    finished: 'All groups are done',
    ended: 'Ended for all groups',
    body: 'Count them, and see that nobody walks home alone who should not. Nothing of this is in your own log.',
    list: 'Tick who came',
    desk: 'Back to the programme',
  },
  none: {
    title: 'No groups are being led',
    go: 'Choose who is here',
  },
} as const;

/** "Something is wrong", for somebody who leads. */
export const leadWrong = {
  held: 'All groups are on hold.',
  signs: 'Get help if anybody has any of this',
  others: 'Send one person to the other groups, and let nobody run on meanwhile.',
  pain: 'Sharp or growing pain in a joint, bone or muscle: no more running for them today. Somebody walks back with them.',
} as const;

/** "Group 1", "Groups 2, 3". */
const groupsSaid = (numbers: readonly number[]): string =>
  `${numbers.length === 1 ? 'Group' : 'Groups'} ${numbers.join(', ')}`;

const doing = (now: LeadNow): string =>
  now.state === 'waits' ? 'wait' : now.state === 'done' ? 'done' : now.segment.activity;

/**
 * Who does what, groups that do the same named together: "Group 1 run · Groups 2, 3 walk". In the
 * order of the lowest number.
 */
export function groupsLine(groups: readonly LeadNow[]): string {
  const by = new Map<string, number[]>();
  for (const each of groups) {
    const what = doing(each);
    by.set(what, [...(by.get(what) ?? []), each.group.number]);
  }
  return [...by].map(([what, numbers]) => `${groupsSaid(numbers)} ${what}`).join(' · ');
}
