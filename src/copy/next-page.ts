/** Next week: the page around what the answers suggest. */
export const nextPage = {
  title: 'Next week',
  back: 'The board',
  looked: 'What was told of',
  lookedOption: (week: number, next: number | undefined): string =>
    next === undefined ? `Week ${week}` : `Week ${week}, for week ${next}`,
  choose: 'Choose a week',
  numbers: 'The numbers behind it',
  other: 'Something else',
  ways: (group: string, next: number): string => `${group}, week ${next}`,
  suggested: 'what the answers suggest',
  take: (next: number, group: string): string => `Put it into week ${next} of ${group}`,
  inIt: (way: string, next: number, group: string): string =>
    `${way}: it is in week ${next} of ${group}.`,
  notSent: 'Nobody has it until you send the next revision.',
  byHand: (next: number, group: string): string =>
    `You changed week ${next} of ${group} yourself since it was sent. Another choice goes in its place.`,
  toDesk: (group: string): string => `Look at it at the desk: ${group}`,
  undo: (group: string): string => `Undo it for ${group}`,
  undone: (next: number, group: string): string =>
    `Week ${next} of ${group} is as it was sent again.`,
  send: 'On to sending the next revision',
  gone: (next: number, group: string): string =>
    `The programme that you are writing has no week ${next} of ${group} any more. Change it at the desk.`,
  refused: 'The programme could not be opened for writing. Nothing was changed.',
  session: (n: number): string => `Session ${n}`,
  before: 'As it was sent',
  after: 'As it would be',
  now: 'As it is now',
  same: 'It stays as it was sent',
  more: 'One session more',
  fewer: 'This session falls away',
  strip: (label: string, plan: string): string => `${label}: ${plan}`,
  message: 'A message to the group',
  messageHelp:
    'Last week in three sentences, and the week to come as it is written now. It names nobody.',
  to: 'To',
  all: 'Everybody',
  draft: 'The message',
} as const;
