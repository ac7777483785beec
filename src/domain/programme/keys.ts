/** Top-level keys of a programme file that is sent, in the order in which they are written. */
export const SENT_KEYS = [
  'format',
  'id',
  'revision',
  'title',
  'language',
  'startDate',
  'goal',
  'leader',
  'groups',
  'weeks',
  'reminders',
] as const;
