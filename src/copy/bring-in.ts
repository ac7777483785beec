/** Bringing answers in: what is asked, what happened to each, and what to do about it. */
import { many } from './grammar.ts';

export const bringIn = {
  title: 'Bring answers in',
  lead: 'Every answer in what you give is found, opened with your keys and sorted in. What is known already is not counted twice, so bring in more rather than less.',
  paste: 'Paste a link, a message or a whole chat',
  pasteGo: 'Bring in what is pasted',
  pasteEmpty: 'Paste something first.',
  files: 'Choose files or pictures',
  folder: 'Choose a folder',
  filesHelp: 'Chat exports (.txt or .zip), .txt files that people sent, pictures of codes.',
  drop: 'Or drop files and folders anywhere on this page.',
  dropNow: 'Let go to bring it in',
  tooMany: (n: number): string => `Only the first ${n} files were looked at.`,
  scan: 'Scan a code with the camera',
  scanning:
    'Hold each phone’s code in the picture. Every answer seen is taken in; go on with the next phone.',
  stop: 'Stop the camera',

  reading: 'Looking for answers',
  readingNow: (percent: number, found: number): string =>
    `${percent} % read, ${many(found, 'answer', 'answers')} found.`,
  cancel: 'Stop here',
  cancelHelp: 'What was taken in by then stays.',

  done: 'Brought in',
  cancelled: 'Stopped',
  cancelledBody:
    'What was taken in by then stays. Bring the rest in again whenever you like: nothing is counted twice.',
  nothing: 'No answer was found in it',
  nothingBody:
    'Copy the whole message, with the long link in it. A plain message that is not sealed cannot be brought in: read it yourself.',
  noneNew: 'Nothing new',
  found: (n: number): string => `${many(n, 'answer was', 'answers were')} found.`,
  takenLine: (answers: number, people: number, sessions: number): string =>
    `${many(answers, 'answer', 'answers')} from ${many(people, 'person', 'people')}, with ${many(sessions, 'session', 'sessions')}`,
  toBoard: (title: string): string => `To the board of ${title}`,
  left: 'Not taken',
  from: (names: readonly string[], more: boolean): string =>
    `In: ${names.join(', ')}${more ? ' and others' : ''}`,
  close: 'Done with this',

  forLeader: {
    title: 'An answer for a leader',
    body: 'This link holds what somebody told the leader of their programme. It is sealed, and the keys that open it are not on this phone. Nothing was read and nothing was stored.',
    hand: 'If you are not that leader: hand the message on to them as it is. Only they can open it.',
    lead: 'If you are: your keys are on the phone you send programmes from. Open the message there, or take your keys over from their backup, here.',
  },
  noKeys: {
    title: 'Your keys are not on this phone',
    body: 'Answers are sealed for your keys, and only they open them. They are on the phone or computer you send programmes from.',
    never:
      'If you never sent a programme with your signature, there is nothing to open yet: keys are made when you first send one.',
    other: 'On another phone? Bring answers in there, or take the keys over from their backup:',
    records: 'Programmes and people come over with the backup of everything',
  },
} as const;

const REFUSED = {
  'not-secure':
    'Nothing can be opened here, because the page did not come over a secure address (https). Nothing was lost: open Towpath at its https address and bring it in there.',
  'not-loaded':
    'A part of the app could not be fetched. Nothing was taken in. Go online once and try again.',
  store:
    'What was opened could not be kept on this phone. What stood on the board is as it was. Free some space, then bring it in again.',
} as const;

export const intakeRefused = (why: keyof typeof REFUSED): string => REFUSED[why];

interface LeftWords {
  /** After a number. */
  readonly one: string;
  readonly more: string;
  /** What happened and what to do. */
  readonly body: string;
}

const LEFT = {
  again: {
    one: 'known already',
    more: 'known already',
    body: 'Everything in it was on the board before. There is nothing to do.',
  },
  'not-for-this-key': {
    one: 'for another leader',
    more: 'for another leader',
    body: 'Sealed for keys that are not on this phone: another leader’s, or ones that you had before; or changed on its way. For another leader, hand it on as it is. For keys you had before, take them over from their backup and bring it in again.',
  },
  'no-keys': {
    one: 'sealed, and no key here',
    more: 'sealed, and no key here',
    body: 'Take your keys over from their backup, then bring it in again.',
  },
  'other-programme': {
    one: 'about a programme that was not sent from this phone',
    more: 'about programmes that were not sent from this phone',
    body: 'It opens with your keys, and there is no board for it here. Bring it in on the phone that the programme was sent from, or bring that phone’s backup here first.',
  },
  damaged: {
    one: 'damaged on its way',
    more: 'damaged on their way',
    body: 'Some of it was changed, so none of it can be read. Ask for it again; as a file it travels best.',
  },
  'cut-short': {
    one: 'cut short',
    more: 'cut short',
    body: 'Only the beginning is there, as when a part of a link is copied. Copy the whole message, or ask for it again.',
  },
  newer: {
    one: 'made by a newer Towpath',
    more: 'made by a newer Towpath',
    body: 'Update this app, then bring it in again.',
  },
  content: {
    one: 'not as an answer should be',
    more: 'not as an answer should be',
    body: 'It opens, and what is in it is not right, so nothing was taken from it. Ask the person to send again, straight from the app.',
  },
  'too-large': {
    one: 'too large to be an answer',
    more: 'too large to be answers',
    body: 'It was not opened. Ask the person to send fewer sessions at a time.',
  },
  'not-secure': {
    one: 'not opened',
    more: 'not opened',
    body: REFUSED['not-secure'],
  },
  ahead: {
    one: 'dated ahead of this phone',
    more: 'dated ahead of this phone',
    body: 'Its time lies more than a day ahead of the clock here. Check the date on this phone; if it is right, ask the person to put theirs right and send again.',
  },
  forgotten: {
    one: 'from somebody who was forgotten',
    more: 'from people who were forgotten',
    body: 'Sent before you had them forgotten, so it stays out. What they send from now on comes in.',
  },
  full: {
    one: 'more than a board holds',
    more: 'more than a board holds',
    body: 'This programme has as many people, or the person as many sessions, as a board can hold. Forget people who have left, then bring it in again.',
  },
  part: {
    one: 'a part of a code of several',
    more: 'parts of codes of several',
    body: 'Some of its parts are missing. Scan or choose all of them together.',
  },
  file: {
    one: 'file without answers that can be read',
    more: 'files without answers that can be read',
    body: 'No text, archive or picture of a code that can be read here. Open it yourself: if there is a link in it, paste that.',
  },
} as const satisfies Readonly<Record<string, LeftWords>>;

/** What was found and not taken: how many of what, and what to do. */
export function leftWords(why: keyof typeof LEFT, count: number): { title: string; body: string } {
  const { one, more, body } = LEFT[why];
  return { title: `${count} ${count === 1 ? one : more}`, body };
}
