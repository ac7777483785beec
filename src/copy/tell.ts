/** What is said about telling the leader, and what an answer says of itself to whoever finds it. */
import type { AnswerCode, AnswerProblem } from '../domain/exchange/problem.ts';
import type { Response, ToldEntry } from '../domain/exchange/response.ts';
import type { Standing } from '../domain/exchange/tell.ts';
import type { Niggle } from '../domain/log/entry.ts';
import type { Group } from '../domain/programme/programme.ts';
import { msOfSeconds } from '../domain/units.ts';
import { effortOfTen } from './effort.ts';
import { many, oneLine } from './grammar.ts';
import { day, length, timeOfDay } from './times.ts';
import { PLACE, SEVERITY, SIDE } from './words.ts';

export const tell = {
  title: 'Tell the leader',
  sub: (leader: string, title: string): string => `${leader}, ${title}`,
  lead: 'Choose what your leader hears of. Nothing is sent by itself: you see all of it first, and then send it your way.',
  sealed: (leader: string): string =>
    `It goes sealed: only ${leader} can read it, whatever way you send it.`,
  plain: {
    'no-key':
      'This programme came without its leader’s key, so nothing can be sealed. What you tell goes as a plain message: anyone who sees the chat can read it.',
    unsigned:
      'Nobody signed this programme, so the key in it could be anybody’s. What you tell goes as a plain message: anyone who sees the chat can read it.',
  },
  none: 'No session of this programme is in your log yet. When one is, you can tell your leader here.',
  sessions: 'Which sessions?',
  sessionsHelp: 'What your leader has not heard of is ticked.',
  ticked: (n: number, of: number): string => `${n} of ${of} ticked.`,
  all: 'Tick all',
  noneTicked: 'Tick none',
  showMore: (n: number): string => `Show ${n} more`,
  more: 'What goes along?',
  niggles: 'Niggles',
  nigglesHelp: 'Pain in one place, as you noted it',
  warningSigns: 'Warning signs',
  warningSignsHelp: 'That you felt a sign to stop. Telling your leader does not replace a doctor.',
  notes: 'Notes',
  notesHelp: 'Word for word, as you wrote them for yourself',
  nothingMore: 'The sessions you chose have no niggle, warning sign or note.',
  who: 'Who are you?',
  nameAlong: 'My name goes along',
  nameAlongHelp: 'Without it your leader sees a number, the same each time',
  name: 'Name',
  nameHelp: 'As your leader knows you. It stays on this phone until you send it.',
  under16: 'I am younger than 16',
  under16Help: 'Name and notes then stay here unless you tick them',
  guardian: 'A parent or guardian has said yes to sending this',
  guardianNeeded: 'Ask a parent or guardian first, and tick that they said yes.',
  chooseOne: 'Tick at least one session.',
  look: 'Look at what will be sent',
  working: 'One moment.',
  reviewTitle: 'This will be sent',
  back: 'Choose again',
  what: 'What is in it',
  behind: 'So that your leader’s phone can sort it in',
  onlyThis: 'Nothing else is in it: no place, no distance, no other programme.',
  plainWords: 'The message, word for word',
  send: 'Send it',
  sendHelp: 'One way is enough. In a chat with your leader, or face to face.',
  share: 'Share it',
  copyLink: 'Copy the link',
  copyMessage: 'Copy the message',
  copied: 'Copied.',
  message: 'The message',
  local:
    'This page is at a local address, so the link opens on this device or network only. Your leader can paste it into Towpath, or take the code or the file.',
  file: 'Share as a .txt file',
  code: 'Show a code to scan',
  codeHelp: 'Your leader points their phone at it.',
  noCode: 'It is too long for a code. Send the link or the file, or choose fewer sessions.',
  part: (n: number, of: number): string => (of === 1 ? 'The code' : `Part ${n} of ${of}`),
  next: 'Next part',
  scanned: 'My leader has scanned it',
  noted: (count: number): string =>
    `Noted on this phone: ${many(count, 'session', 'sessions')} told today.`,
  notSent: 'I did not send it after all',
  takenBack: 'Then it counts as not told.',
  toSessions: 'To my sessions',
  before: 'What you told so far',
  toldOn: (on: string, count: number): string => `${on}: ${many(count, 'session', 'sessions')}`,
} as const;

/** What stands behind a session in the list. */
export const standing = (of: Standing): string =>
  ({ new: '', told: 'Told already', changed: 'Told, and changed since' })[of];

const SENTENCES: Readonly<Record<AnswerCode, string>> = {
  content: 'What is in this answer is not as it should be. Nothing was taken from it.',
  'cut-short': 'This is only the beginning of an answer. Ask for the whole of it again.',
  damaged: 'This answer was damaged or cut short on its way. Ask for it to be sent again.',
  empty: 'There is nothing to tell yet: choose at least one session.',
  newer: 'This answer was made by a newer Towpath. Update this one, then open it again.',
  'no-keys': 'There are no leader’s keys on this phone, so no answer can be opened here.',
  'not-an-answer': 'This is a programme, not an answer. Open it where programmes are opened.',
  'not-for-this-key':
    'This cannot be opened with the keys on this phone. It was sealed for another leader or an earlier key, or it was changed on its way.',
  'not-kept': 'This phone’s storage could not be used. Nothing was made or sent. Try again.',
  'not-loaded':
    'A part of the app could not be fetched. Nothing was made or sent. Go online once and try again.',
  'not-secure':
    'Nothing can be sealed or opened here, because the page did not come over a secure address (https).',
  'other-programme': 'This answer is about another programme.',
  seal: 'The leader’s key in this programme cannot be used. Ask your leader to send the programme again.',
  'too-large':
    'This is too much for one answer. Choose fewer sessions and send the rest in another.',
};

export const answerProblem = ({ code }: AnswerProblem): string => SENTENCES[code];

function niggleWords({ place, side, severity }: Niggle): string {
  const where = side === undefined ? PLACE[place] : `${PLACE[place]}, ${SIDE[side].toLowerCase()}`;
  return severity === undefined ? where : `${where}, ${SEVERITY[severity]}`;
}

const groupName = (id: string, groups: readonly Group[]): string =>
  groups.find((group) => group.id === id)?.name ?? id;

/** "Mon, 1 March 2027, 17:30" and how long it was. */
export interface SessionWords {
  readonly title: string;
  readonly lines: readonly string[];
}

/** One session of an answer, everything that is in it, in plain words. */
function sessionWords(entry: ToldEntry, groups: readonly Group[]): SessionWords {
  const { effort, effortLater, niggle, warningSign, note, group } = entry;
  const [done, active] = [entry.doneSeconds, entry.activeSeconds].map((n) =>
    length(msOfSeconds(n)),
  );
  const moved = active === done ? '' : `, ${active} moving`;
  return {
    title: `${day(entry.localDate)}, ${timeOfDay(entry.startedAt, entry.offsetMinutes)}`,
    lines: [
      `Week ${entry.week}, session ${entry.session}. ${done} done${moved}.`,
      ...(group === undefined ? [] : [`With group ${groupName(group, groups)}.`]),
      ...(effort === undefined && effortLater === undefined ? ['Not rated.'] : []),
      ...(effort === undefined ? [] : [`Felt ${effortOfTen(effort)}.`]),
      ...(effortLater === undefined ? [] : [`Later it felt ${effortOfTen(effortLater)}.`]),
      `Meant to be ${Math.round(entry.target / 10)}.`,
      ...(warningSign === undefined ? [] : ['Warning sign: felt a sign to stop.']),
      ...(niggle === undefined ? [] : [`Niggle: ${niggleWords(niggle)}.`]),
      ...(note === undefined ? [] : [`Note: “${note}”`]),
    ],
  };
}

export interface AnswerWords {
  readonly who: readonly string[];
  readonly sessions: readonly SessionWords[];
  readonly leftOut: string;
  /** What is in a sealed answer besides, so that the leader's phone can sort it in. */
  readonly behind: readonly string[];
}

interface About {
  readonly title: string;
  readonly leader: { readonly name: string };
  readonly groups: readonly Group[];
}

const leftOutWords = (n: number): string =>
  n === 0
    ? 'No session is left out.'
    : `${many(n, 'session is', 'sessions are')} left out; only the number is told.`;

/** Everything that is in an answer, in plain words. */
export function answerWords(response: Response, { leader, groups }: About): AnswerWords {
  const { name, group, entries, leftOut, programme } = response;
  const zones = [...new Set(entries.map(({ zone }) => zone))].join(', ');
  return {
    who: [
      name === undefined ? 'Your name is not in it.' : `Name: ${name}.`,
      `Group: ${groupName(group, groups)}.`,
    ],
    sessions: entries.map((entry) => sessionWords(entry, groups)),
    leftOut: leftOutWords(leftOut),
    behind: [
      `A random number that this phone made for this programme alone. By it ${leader.name} knows that two answers are from the same person.`,
      `Which revision of the programme you have (${programme.revision}), and when this was put together.`,
      `The time zone of each session (${zones}) and a random number for it, so that it is never counted twice.`,
    ],
  };
}

/** A plain message for a leader without a key: what was done, and who can read it. */
export function plainText(response: Response, about: About): string {
  const { sessions, leftOut } = answerWords(response, about);
  return [
    `To ${oneLine(about.leader.name)}, about “${oneLine(about.title)}”. This is not sealed: anyone who sees it can read it.`,
    [
      ...(response.name === undefined ? [] : [`From ${response.name}.`]),
      `Group ${groupName(response.group, about.groups)}.`,
    ].join(' '),
    '',
    ...sessions.map(({ title, lines }) => `- ${title}. ${lines.map(oneLine).join(' ')}`),
    '',
    leftOut,
    '',
  ].join('\n');
}

interface Going {
  readonly title: string;
  readonly leader: string;
  readonly link: string;
}

/** A message with a sealed answer, short enough for a chat. It says nothing of what is sealed. */
export const sealedMessage = ({ title, leader, link }: Going): string =>
  `For ${oneLine(leader)}, about “${oneLine(title)}”: how my sessions went. Sealed, only you can read it.\n${link}`;

/** The text of a file with a sealed answer. Its first line says in words what it is. */
export const sealedText = ({ title, leader, link }: Going): string =>
  [
    `An answer for ${oneLine(leader)}, who leads “${oneLine(title)}” with the Towpath app: how a participant’s sessions went. It is sealed, and only ${oneLine(leader)} can read it.`,
    'To read it, open the link on the phone that has the leader’s keys, or copy all of this and paste it into Towpath there.',
    '',
    link,
    '',
  ].join('\n');
