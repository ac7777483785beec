/** Words in the files in which a leader keeps what others told, and their names. */

/** What a locked file of boards says of itself to whoever opens it. */
export const boardsWords =
  'What the people of a group told their leader with Towpath: names, sessions, effort, niggles, notes. It is locked with the passphrase that it was made with; nobody can read it without. To use it: in Towpath, under “I lead a group”, open what came back, the board of the programme, “Keep and hand over”, and there “Take a locked file in”. To open answers that are still to come, whoever leads too needs the backup of the leader’s keys as well.';

export const boardFileName = {
  board: (programmeId: string, date: string, what: 'csv' | 'json'): string =>
    `${programmeId}-people-${date}.${what}`,
  locked: (date: string): string => `towpath-boards-${date}.txt`,
} as const;
