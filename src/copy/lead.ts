/** For the person who leads a group: files, keys, and sending. */
export const lead = {
  exampleName: 'heron-loop.json',
  sentTitle: 'Sent from this phone',
  sentLine: (title: string, revision: number): string => `${title}, revision ${revision}`,
  again: (title: string): string => `Send ${title} again`,
  writeOn: (title: string): string => `Write on from ${title}`,
  errorsTitle: 'This file cannot be used yet',
  errorsBody: (count: number): string =>
    count === 1
      ? 'One thing is wrong. Put it right and open the file again.'
      : `${count} things are wrong. Put them right and open the file again.`,
  wholeFile: 'The file',
  tooLarge: 'The file is larger than a programme can be (256 KiB).',
  unreadable: 'The phone could not read the file.',
  asSent:
    'This is a programme as people receive it, and it can be looked at under “Open a link, a code or a message”. To write on, open the .json file that you saved; what was sent from this phone stands below.',
} as const;

export const leaderKeys = {
  title: 'First, your keys',
  why: 'A key is how forty phones know that the next revision is really from you. If this phone is lost and there is no backup, nobody can take your place, and everyone has to compare digits with you again.',
  passphrase: 'A passphrase for the backup',
  passphraseHelp: 'Four or five words that you can remember. Write them down, away from the file.',
  make: 'Make keys and save the backup',
  restoreTitle: 'I have a backup',
  restoreFile: 'Choose the backup file',
  restoreChosen: (name: string): string => `Chosen: ${name}`,
  restorePassphrase: 'The passphrase of the backup',
  restore: 'Take the keys from the backup',
  saveTitle: 'Save the backup',
  saveBody: 'Your keys are made, but the backup was not saved yet. Save it before you publish.',
  save: 'Save the backup file',
  manage: 'My keys',
  madeAt: (day: string): string => `Made ${day}.`,
  savedAt: (day: string): string => `Backup last saved ${day}.`,
  digits: 'Show my six digits',
  digitsSaid: (digits: string): string => `Read these out in person: ${digits}`,
  saveAgain: 'Save the backup again',
  replaceTitle: 'Replace my keys',
  replaceBody:
    'Do this when somebody else may have your keys. The old key vouches for the new one, and phones follow with your next revision.',
  replace: 'Make new keys and save their backup',
  working: 'One moment.',
  done: 'Done.',
} as const;

export const sending = {
  title: 'Send it',
  publish: 'Sign and publish',
  publishHelp: 'It carries your signature, so that phones take your next revision as an update.',
  change: 'What changed since the last time',
  changeHelp:
    'As far as Towpath can tell: put it in your own words. People see it before they take the update.',
  before: (revision: number): string => `You last sent revision ${revision}. This is the next one.`,
  unchanged: (revision: number): string =>
    `You last sent revision ${revision}, and nothing was changed since. It can go out again under the same number:`,
  unsignedTitle: 'Without a signature',
  unsigned: 'Send an unsigned copy',
  unsignedHelp: 'Anyone can change it, and nobody gets updates from it. It needs no keys.',
  sheetSub: (revision: number, signed: boolean): string =>
    `Revision ${revision}, ${signed ? 'signed by you' : 'not signed'}. Choose how to send it.`,
  linkTitle: 'A link',
  link: 'Copy the link',
  linkCopied: 'Link copied.',
  local:
    'This page is at a local address, so the link works on this device or network only. Send the code, the file or the text instead, to people who have the app.',
  codeTitle: 'A code to scan',
  codeHelp: 'In Towpath: “Open a link, a code or a message”, then the camera.',
  part: (n: number, of: number): string => (of === 1 ? 'The code' : `Part ${n} of ${of}`),
  next: 'Next part',
  noCode: 'It is too long for a code. Send the link or the file.',
  fileTitle: 'A file',
  file: 'Share the .txt file',
  messageTitle: 'A message',
  message: 'Copy the message',
  messageCopied: 'Message copied.',
  whole: 'Copy the text with instructions',
  print: 'Print the code',
} as const;
