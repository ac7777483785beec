/** Words of the pages on which a leader sees a programme's people. What cells and groups say is in `board.ts`. */
import { many } from './grammar.ts';

export const boards = {
  title: 'What came back',
  sub: 'What your groups told you, programme by programme.',
  heard: (heard: number, of: number): string => `Heard from ${heard} of ${of} this week`,
  nothingYet: 'Nothing has come back yet.',
  due: (n: number): string => `${n} ${n === 1 ? 'needs' : 'need'} a word`,
  open: (title: string): string => `The board of ${title}`,
  one: 'What came back',
  toBringIn: 'Bring in what people sent you',
  back: 'My programmes',
  mine: 'Your programmes',
  none: 'No programme was sent from this phone yet. Once one is out, people can tell you how it goes, and their answers stand here.',
  toLead: 'To my programmes',
  went: (title: string): string =>
    `What people told of ${title} is gone from this phone: 90 days after the event were over.`,
  unread: 'What was kept could not be read just now. Nothing is lost: open this page again.',
  again: 'Try again',
} as const;

export const boardPage = {
  sub: (week: number, weeks: number): string => `The board, week ${week} of ${weeks}`,
  back: 'Bring answers in, all boards',
  noReply: 'No reply yet',

  pages: 'Pages of this board',
  words: (n: number): string => (n === 0 ? 'Who needs a word' : `Who needs a word (${n})`),
  next: 'Next week',
  list: 'Who came',
  keep: 'Keep and hand over',
  goes: (date: string): string => `People and what they told go from this phone on ${date}.`,
  stays: 'People and what they told stay on this phone until you let them go.',
  goesLink: 'Keep them, or let them go',

  look: 'Which people, which week',
  week: 'Week',
  weekOption: (n: number, dates: string): string => (dates === '' ? String(n) : `${n}: ${dates}`),
  earlier: 'Week before',
  later: 'Week after',
  group: 'Group',
  allGroups: 'All groups',
  show: 'Show',
  shows: {
    all: 'Everyone',
    heard: 'Those who told of this week',
    silent: 'No reply about this week',
    due: 'Those who need a word',
  },
  sort: 'Order',
  sorts: {
    name: 'By name',
    due: 'Needs a word first',
    done: 'Most done in this week first',
    gap: 'Felt hardest against what was meant first',
  },
  search: 'Find by name',
  everyone: (n: number): string => `All ${n}`,
  /** What a folded choice of people says: "Which people: All 32 · By name". */
  chosen: (parts: readonly string[]): string => `Which people: ${parts.join(' · ')}`,
  found: (n: number, of: number): string =>
    n === of ? many(n, 'person', 'people') : `${n} of ${many(of, 'person', 'people')}`,
  foundNone: 'Nobody here fits. Change the name, the group or who is shown.',
  more: (n: number, group: string): string => `Show ${n} more of ${group}`,

  table: 'People by weeks',
  scroll: 'People by weeks; scrolls',
  person: 'Person',
  weekHead: (n: number): string => `Week ${n}`,
  now: 'now',
  half: (low: string, high: string): string => `(${low} to ${high})`,
  groupHelp: 'heard from, and how it felt',
  of: (heard: number, of: number): string => `${heard} of ${of}`,
  needsWord: 'needs a word',
  byHand: 'written in by you',
  niggles: (n: number): string => (n === 1 ? 'Niggle' : `${n} niggles`),
  signs: (n: number): string => (n === 1 ? 'Warning sign' : `${n} warning signs`),
  cut: (n: number): string => (n === 1 ? 'Cut short' : `${n} cut short`),

  numbers: 'How many are in each group',
  expect: (group: string): string => `How many are in ${group}?`,
  expectHelp: 'So that “heard from” says of how many. Leave it empty if you do not know.',
  expectSave: 'Keep this number',
  expectKept: 'Kept.',
  expectWrong: 'Write a whole number up to 999.',

  legend: 'What the marks mean',
  marks: {
    done: 'done',
    begun: 'begun, too little to count',
    asked: 'asked for',
    may: 'may be done besides',
    half: 'where the middle half of a group’s ratings lies',
  },

  empty: {
    title: 'Nothing has come back yet',
    how: 'This is how people answer:',
    steps: (tell: string): readonly string[] => [
      `On the programme’s page in Towpath they choose “${tell}”.`,
      'They tick what you may know, and send it as a link, a file or a code: in the chat, by mail, or face to face.',
      'You bring it in here: tap the link on this phone, paste the chat, choose the files, or scan the code.',
    ],
    sealed: 'What they send is sealed. Only this phone, with your keys, can read it.',
    unsealed:
      'This programme went out without your key, so answers come as plain messages that cannot be brought in. Send it once more with your signature, and people can seal their answers.',
  },
} as const;

export const personPage = {
  back: 'The board',
  sub: (group: string): string => `Group ${group}`,
  due: 'Needs a word',
  signBody:
    'Speak with them today. They should not train again before a doctor says so; if a sign comes back or is there now, they call the local emergency number. This page is no doctor’s advice.',
  toCautions: 'Signs to stop, and what to do',
  niggleBody:
    'Ask how it is now. Pain that changes how somebody moves, or that returns, wants rest and someone licensed to look at it, not a push.',
  felt: {
    title: 'How hard it felt',
    lead: 'How hard each session felt, against how hard it was meant to feel. What counts is the distance to the line, and how it moves.',
    none: 'No session was rated yet.',
    said: (n: number, near: number, harder: number, easier: number): string =>
      `${many(n, 'rated session', 'rated sessions')}: ${near} as meant, ${harder} harder by 2 points or more, ${easier} easier by 2 points or more.`,
    session: 'Session',
    date: 'Day',
    gap: 'Against meant',
  },
  weeks: 'Week by week',
  stripHelp: 'Drawn full: how much was done, counted from the start. Dotted: the rest.',
  session: (n: number): string => `Session ${n}`,
  otherGroup: (group: string): string => `with ${group}`,
  done: (percent: number): string => `${percent} % of the plan`,
  moved: (length: string): string => `${length} moving`,
  there: 'On your list',
  thereOnly: 'On your list; they have not told of it.',
  rated: (felt: string, target: string, gap: string): string =>
    `Felt ${felt}, meant ${target}: ${gap}.`,
  elsewhere: 'After the programme’s last week',
  unrated: (target: string): string => `Not rated. Meant ${target}.`,
  note: (text: string): string => `“${text}”`,
  noWeeks: 'No week has begun yet.',

  own: 'What you call them',
  name: 'Name',
  nameHelp: (told: string | undefined): string =>
    told === undefined
      ? 'They sent no name. What you write stays on this phone.'
      : `They call themselves ${told}. Empty takes your own name for them back.`,
  group: 'Group',
  groupHelp: (told: string | undefined): string =>
    told === undefined ? '' : `Their phone says ${told}.`,
  save: 'Keep it',
  saved: 'Kept.',
  failed: 'This phone could not keep it. Nothing was changed. Try again.',

  same: 'Is it the same person?',
  sameHelp:
    'You wrote them in before they told anything. Once they have, choose who they are: your list and what they told become one.',
  sameWho: 'The same person as',
  sameNobody: 'Nobody yet',
  sameSave: 'They are one',
  sameNone: 'Nobody of this programme has told anything yet.',
  sameIs: (name: string): string => `${name}, whom you wrote in, is this person.`,
  sameUndo: (name: string): string => `No, ${name} is somebody else`,

  forget: 'Forget this person',
  forgetBody: 'If they ask you to, or when they leave. It is done wholly and cannot be taken back.',
  forgetGo: (name: string): string => `Forget ${name}`,
  forgetTitle: (name: string): string => `Forget ${name} wholly?`,
  forgetWhat: (sessions: number, days: number, notes: number): readonly string[] => [
    `From this phone go their name, group and ${many(sessions, 'session', 'sessions')}, with every rating, niggle and warning sign${notes === 0 ? '' : ` and ${many(notes, 'note', 'notes')}`}.`,
    ...(days === 0
      ? []
      : [
          `${many(days, 'tick', 'ticks')} on your lists of who came ${days === 1 ? 'goes' : 'go'} too.`,
        ]),
    'What they sent before is not taken in again. If they send anew, they are here again.',
    'Messages in your chats, files that you saved and what you handed to others are not touched: take it out there yourself.',
  ],
  forgetYes: 'Forget wholly',
  forgetNo: 'Keep them',
} as const;
