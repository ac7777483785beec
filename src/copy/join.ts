/** Receiving a programme: what it is, what is already here, and what each choice does. */
import type { Acceptance, Verdict } from '../domain/exchange/decide.ts';

export const join = {
  title: 'A programme for you',
  sub: 'Look at it first. Nothing is stored until you say so.',
  pasteTitle: 'Paste what you were sent',
  paste: 'The link, or the whole message',
  pasteGo: 'Open it',
  codeTitle: 'Or read a code',
  scan: 'Use the camera',
  scanning: 'Hold the code in the picture. Several parts may come in any order.',
  camera: 'What the camera sees',
  stop: 'Stop the camera',
  file: 'Choose a picture or a file',
  fileHelp: 'A picture of the code, or the .txt or .json file that your leader sent.',
  ios: 'On this phone a link opens the browser, and the browser cannot put anything into the app on your home screen. So open the app, come to this page, and paste the message or scan the code here.',
  reading: 'Reading it.',
  parts: (have: number, of: number): string => `${have} of ${of} parts are here.`,
  partsHave: (have: readonly number[]): string =>
    `Read so far: part ${[...have].sort((a, b) => a - b).join(', part ')}. Go on with the next one.`,
  again: 'Start again',
  refused: 'This was not taken. Nothing on this phone has changed.',
  more: (count: number): string => `And ${count} more like this.`,
  notKept: 'It could not be written to this phone. Nothing was changed. Try again.',
  leave: 'Leave it',
  weeks: 'Weeks',
  groups: 'Groups',
  leader: 'Leader',
  revision: 'Revision',
  changed: 'What changed',
  from: 'Sent by',
  signed: 'Signed: nobody has changed it since it was sent.',
  unsigned: 'Not signed: anyone may have written or changed it.',
  here: 'On this phone',
  digits: 'Six digits to compare',
  groupGone: (name: string): string =>
    `The group ${name} is not in it any more. You will be asked to choose another.`,
  toIt: 'Open the programme',
} as const;

interface Said {
  readonly title: string;
  readonly body: string;
}

const VERDICTS: {
  readonly [K in Verdict['kind']]: (
    verdict: Extract<Verdict, { kind: K }>,
    revision: number,
    leader: string,
  ) => Said;
} = {
  new: () => ({ title: 'New on this phone', body: 'Keep it, and then choose your group.' }),
  same: () => ({ title: 'You have this already', body: 'It is the same, word for word.' }),
  update: ({ from }, revision) => ({
    title: `An update: revision ${revision}`,
    body: `You have revision ${from}, by the same leader. Your group, your place and your record stay.`,
  }),
  older: ({ stored }, revision) => ({
    title: 'Older than yours',
    body: `This is revision ${revision}, and you have ${stored}. There is nothing to do.`,
  }),
  conflict: (_, revision) => ({
    title: 'Same number, other content',
    body: `You have another revision ${revision} by this leader. Ask which one counts before you replace yours. Your record stays either way.`,
  }),
  copy: () => ({
    title: 'A copy without a signature',
    body: 'You have a programme of this name. This one can stand beside it, and cannot replace it.',
  }),
  rotated: ({ from }, revision, leader) => ({
    title: `An update, with a new key: revision ${revision}`,
    body: `You have revision ${from}. ${leader} changed keys, and the old key vouches for the new one. Your group, your place and your record stay.`,
  }),
  retired: () => ({
    title: 'Signed with a key that was replaced',
    body: 'Its leader uses another key now. Ask for the latest one; this cannot be kept.',
  }),
  'key-changed': ({ from }, _, leader) => ({
    title: 'Is this really your leader?',
    body: `You have revision ${from}, and this one is signed by somebody whom nothing here vouches for. Meet ${leader} or call a number you know, and ask for the six digits. Do not take digits that came with the message.`,
  }),
};

/** What it is to this phone, as a heading and what follows from it. */
export const verdictSaid = (verdict: Verdict, revision: number, leader: string): Said =>
  (VERDICTS[verdict.kind] as (v: Verdict, r: number, l: string) => Said)(verdict, revision, leader);

interface Choice {
  readonly name: string;
  readonly help: string;
}

/** What a choice is called and what it does. */
export function choiceSaid(choice: Acceptance, kind: Verdict['kind'], revision: number): Choice {
  if (choice === 'keep-apart')
    return {
      name: 'Keep it as a separate copy',
      help: 'What you have stays as it is. The copy has its own group and record.',
    };
  if (choice === 'take-over')
    return kind === 'key-changed'
      ? {
          name: 'All six digits agree: take it',
          help: 'It takes the place of yours. Your group and your record carry over.',
        }
      : {
          name: 'Replace mine with this',
          help: 'It takes the place of yours. Your group and your record stay.',
        };
  return kind === 'new'
    ? { name: 'Keep this programme', help: 'It is stored on this phone only.' }
    : { name: `Take revision ${revision}`, help: 'It takes the place of the one you have.' };
}
