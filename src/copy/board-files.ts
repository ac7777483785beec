/** Words in and about the files in which a leader keeps what others told. */

/** What a locked file of boards says of itself to whoever opens it. */
export const boardsWords =
  'What the people of a group told their leader with Towpath: names, sessions, effort, niggles, notes. It is locked with the passphrase that it was made with; nobody can read it without. To use it: in Towpath, under “I lead a group”, open what came back, and there “Take a file in”. To open answers that are still to come, whoever leads too needs the backup of the leader’s keys as well.';

export const boardFiles = {
  title: 'Keep it, or hand it on',
  saveCare:
    'These files hold other people’s data: names, niggles, notes. Anyone who opens one can read it. Keep it where only you get at it, and delete it when you are done.',
  locked: 'A locked file',
  lockedBody:
    'Everything that people told you, in one file that opens only with your passphrase: for yourself, before this device is lost, or for somebody who leads with you. Both of you can take in each other’s file as often as you like.',
  lockedKeys:
    'Your keys are not in it. To open answers that are still to come, whoever leads with you needs the backup of your keys too.',
  notInBackup: 'The backup under “Backup and calendar” is not locked, so nothing of this is in it.',
} as const;

export const boardFileName = {
  board: (programmeId: string, date: string, what: 'csv' | 'json'): string =>
    `${programmeId}-people-${date}.${what}`,
  locked: (date: string): string => `towpath-boards-${date}.txt`,
} as const;
