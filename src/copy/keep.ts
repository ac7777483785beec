/** Keeping, handing over and letting go of what people told. */
import { KEY_CODES, type KeyCode } from '../domain/exchange/problem.ts';
import { keyProblem } from './exchange.ts';
import { many } from './grammar.ts';
import { day } from './times.ts';

type StoreCode = 'full' | 'lost' | 'newer' | 'not-ours';

const STORE: Readonly<Record<StoreCode, string>> = {
  full: 'This phone has no space left, so this was not kept. What was there is as it was. Make room and try again.',
  lost: 'This phone’s storage could not be used just now, so this was not kept. What was there is as it was. Try again.',
  newer: 'A newer Towpath has been on this phone, so this was not kept. Update this one first.',
  'not-ours': 'This phone’s storage could not be written. What was there is as it was. Try again.',
};

/** Where the sentence about keys speaks of keys alone. */
const OF_BOARDS: Partial<Readonly<Record<KeyCode, string>>> = {
  'backup-damaged': 'This is not a locked file of boards, or it is damaged. Nothing was taken in.',
  'backup-newer': 'This file was made by a newer Towpath. Update this one first.',
  'not-secure':
    'Nothing can be locked or opened here, because the page did not come over a secure address (https).',
  'not-kept': STORE.lost,
};

const isKeyCode = (code: KeyCode | StoreCode): code is KeyCode =>
  (KEY_CODES as readonly string[]).includes(code);

/** Why something of a board was not done, what is safe, and what to do. */
export const boardProblem = ({ code }: { readonly code: KeyCode | StoreCode }): string =>
  isKeyCode(code) ? (OF_BOARDS[code] ?? keyProblem({ code })) : STORE[code];

export const keep = {
  title: 'Keep and hand over',
  back: 'The board',
  working: 'One moment.',

  time: 'How long it stays',
  goes: (date: string): string =>
    `People and what they told go from this phone on ${day(date)}, 90 days after the event and at least 14 after the latest news, unless you keep them.`,
  goesWithoutEvent: (date: string): string =>
    `People and what they told go from this phone on ${day(date)}, 90 days after the last week and at least 14 after the latest news, unless you keep them.`,
  kept: 'You keep them: people and what they told stay on this phone until you let them go.',
  goesAfterLast: (date: string): string =>
    `This programme has no dates: people and what they told go from this phone on ${day(date)}, 90 days after you last heard from anybody, unless you keep them.`,
  nothing: 'Nobody is on this board yet, so nothing has to go.',
  keepOn: 'Keep them',
  keepOnHelp: 'Only as long as the group needs it, and as they agreed to.',
  letGo: 'Let them go when their time is over',
  letGoTitle: 'Let them go?',
  letGoBody:
    'People and what they told then go when their time is over. Where it is over already, they go the next time the boards are opened, and cannot be brought back.',
  letGoYes: 'Let them go',
  letGoNo: 'Keep them',

  files: 'Save this board as a file',
  filesBody: 'For a spreadsheet, or for other programs. It cannot be read back in as a board.',
  filesCare:
    'The file holds other people’s data: names, how they felt, niggles and warning signs. Anyone who gets at it can read it. Show it only to those who lead with you, send it to no group chat, and delete it when it has done its work.',
  csv: 'As a table (CSV)',
  json: 'As data (JSON)',
  given: 'Given out. Look that it arrived where you wanted it, and delete it afterwards.',

  lock: 'Save all boards under a passphrase',
  lockBody:
    'One locked file with the boards of all your programmes: a backup, or for somebody who leads too. Nobody reads it without the passphrase, and nobody can find the passphrase again.',
  lockGo: 'Lock and save',
  lockLabel: 'A passphrase for the boards',
  locked: 'Locked and given out. Keep the passphrase apart from the file.',

  open: 'Take a locked file in',
  openBody:
    'From another phone of yours, or from somebody who leads with you. You see first what it would bring. Nothing here is lost, and doing it twice does no harm.',
  choose: 'Choose the file',
  chosen: (name: string): string => `Chosen: ${name}`,
  openLabel: 'The passphrase of the file',
  openGo: 'Look into it',
  previewTitle: 'What is in this file',
  take: 'Take it in',
  leave: 'Leave it',
  taken: 'It is in. This phone now has what both had.',
  nothingNew: 'Everything in it is here already. There is nothing to take in.',

  hand: 'Hand over to somebody who leads too',
  handBody:
    'They then open answers, see the board and send programmes in your name. So only to somebody you would give your house key to.',
  handSteps: {
    link: 'The programme’s link: they open it in Towpath as everyone does, so that their phone knows which revision is out.',
    sendAgain: 'Send the link again',
    keys: 'Your keys: the backup file. In Towpath: “I lead a group”, any programme, “Go on to sending”, “I have a backup”.',
    saveKeys: 'Save the backup of my keys',
    file: 'The programme as a file: they open it in “I lead a group”, then sign and publish it once. From then on its board is on their phone.',
    saveFile: 'Save the programme as a file',
    boards:
      'The boards: the locked file from above. They take it in on their board: “Keep and hand over”, “Take a locked file in”.',
    tell: 'Tell them both passphrases face to face or by phone, never in the message with the files.',
    one: 'From then on one of you at a time sends the next revision, so that no two have the same number.',
    back: 'To take it back, make new keys under “My keys” where you send: replies to the new ones are yours alone. What they have seen they have seen.',
  },
  keysSaved: 'The backup of your keys was given out.',
  noKeys: 'There are no keys on this phone: they are made when you first send a programme.',

  forget: 'Forget a person',
  forgetBody:
    'When somebody asks you to, or leaves. It is done wholly, from this phone and from every file saved afterwards.',
  search: 'Find by name',
  nobody: 'Nobody is on this board yet.',
  noneFound: 'Nobody by that name is on this board.',
  more: (n: number): string =>
    `${many(n, 'more person', 'more people')}. Write a part of the name.`,
  forgotten: (name: string): string => `${name} is forgotten: nothing of them is left here.`,
} as const;

interface Preview {
  readonly programmes: readonly { readonly title?: string }[];
  readonly people: number;
  readonly newPeople: number;
  readonly sessions: number;
  readonly newSessions: number;
  readonly forgotten: number;
}

/** What a locked file would bring, in sentences. */
export function previewLines(preview: Preview): readonly string[] {
  const { programmes, people, newPeople, sessions, newSessions, forgotten } = preview;
  const titles = programmes.flatMap(({ title }) => title ?? []);
  const others = programmes.length - titles.length;
  return [
    ...(titles.length > 0 ? [`Boards of ${titles.join(', ')}.`] : []),
    ...(others > 0
      ? [
          `${many(others, 'board is', 'boards are')} of programmes that are not on this phone. They come in too, and show once the programme is here.`,
        ]
      : []),
    `${many(people, 'person', 'people')}, ${newPeople} of them new here.`,
    `${many(sessions, 'session', 'sessions')}, ${newSessions} of them new here.`,
    ...(forgotten > 0
      ? [
          `${many(forgotten, 'person was', 'people were')} forgotten here and ${forgotten === 1 ? 'stays' : 'stay'} so.`,
        ]
      : []),
  ];
}
