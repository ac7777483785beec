/** What is said about sending and receiving: what happened, what is safe, what to do. */
import type { ExchangeCode, ExchangeProblem, KeyCode } from '../domain/exchange/problem.ts';
import { oneLine } from './grammar.ts';
import { programmeProblem } from './programme.ts';

const SENTENCES: Readonly<Record<ExchangeCode, string>> = {
  answer:
    'This is what someone told their leader, not a programme. Only the leader it was sent to can open it.',
  'camera-none': 'No camera can be used here. Open a picture of the code, or paste the link.',
  'camera-refused':
    'The camera was not allowed. Allow it in the browser, or open a picture of the code.',
  'code-none':
    'No code could be read in this picture. Take it straight on, in good light, with all four corners in it.',
  'cut-short': 'This is only the beginning of a programme. Ask for the whole link again.',
  damaged:
    'This was damaged or cut short on its way. Nothing was changed here. Ask for it to be sent again.',
  empty: 'There is nothing in it.',
  'file-kind': 'This file is neither a programme nor a picture of a code.',
  newer: 'This was made by a newer Towpath. Update this one, then open it again.',
  'not-secure':
    'Who sent this cannot be checked here, because the page did not come over a secure address (https). Nothing was stored.',
  'not-loaded':
    'A part of the app could not be fetched. Nothing was changed. Go online once and open the app again.',
  'nothing-found': 'No programme was found in this. Copy the whole message, link included.',
  picture: 'This picture cannot be opened.',
  programme: 'This programme cannot be used, because something in it is wrong.',
  signature:
    'The signature on this is wrong: it was changed after its leader sent it. Nothing was stored. Ask the leader for it again.',
  store: 'This phone’s storage could not be read. Nothing was changed. Open the app again.',
  'too-large': 'This is too large to be a programme. Nothing was opened.',
};

/** Why something from outside was not taken; for a programme, its first mistake too. */
export function exchangeProblem({ code, problems = [] }: ExchangeProblem): string {
  const [first] = problems;
  return first === undefined ? SENTENCES[code] : `${SENTENCES[code]} ${programmeProblem(first)}`;
}

const KEY_SENTENCES: Readonly<Record<KeyCode, string>> = {
  'backup-damaged': 'This is not a backup of keys, or it is damaged.',
  'backup-newer': 'This backup was made by a newer Towpath. Update this one first.',
  'not-secure':
    'Programmes cannot be signed here, because the page did not come over a secure address (https).',
  'no-keys': 'There are no keys on this phone yet.',
  'not-backed-up': 'Save the backup of your keys first. Without it, a lost phone is a lost name.',
  'not-kept': 'The keys could not be written to this phone. Nothing was changed. Try again.',
  'not-loaded':
    'A part of the app could not be fetched. Nothing was changed. Go online once and try again.',
  'passphrase-short': 'Make the passphrase longer: four or five words, 15 characters or more.',
  'passphrase-wrong': 'The passphrase is not the one of this file, or the file was changed.',
};

export const keyProblem = ({ code }: { readonly code: KeyCode }): string => KEY_SENTENCES[code];

/** What a backup file says of itself to whoever finds it. */
export const backupWords =
  'Backup of a leader’s keys for Towpath. Keep this file and its passphrase apart from each other. Whoever has both can send programmes in the leader’s name and read replies. To use it: in Towpath, “I lead a group”, open your programme, go on to sending, “I have a backup”.';

interface Going {
  readonly title: string;
  readonly leader: string;
  readonly revision: number;
  readonly signed: boolean;
  readonly change?: string;
  readonly link: string;
}

/** The text that is copied or saved as a file. Its first line says in words what it is. */
export function sendText(going: Going): string {
  const { title, leader, revision, signed, change, link } = going;
  return [
    `A walking and running programme for the Towpath app: “${oneLine(title)}”, revision ${revision}, from ${oneLine(leader)}.`,
    ...(change ? [`What changed: ${oneLine(change)}`] : []),
    ...(signed ? [] : ['It is not signed: anyone may have changed it.']),
    'To use it, open the link on your phone. Or copy all of this, and in Towpath choose “Open a link, a code or a message”, then paste.',
    '',
    link,
    '',
  ].join('\n');
}

/** A message to send with it, short enough for a chat. */
export function sendMessage({ title, revision, change, link }: Going): string {
  const what = `${oneLine(title)}, revision ${revision}.`;
  return `${change ? `${what} ${oneLine(change)}` : what}\n${link}`;
}
