/** The effort asked for once more, after a pause. */
export const again = {
  title: 'And now, looking back?',
  banner: (day: string): string => `How hard was the session of ${day}, now that it is over?`,
  say: 'Say it now',
  not: 'Not for this one',
  lead: 'The whole session, walking included. The last minutes no longer stand for all of it. Go by what you feel now; the first answer stays as it is.',
  save: 'Save',
  setting: 'Ask me again later',
  settingHelp:
    'How hard it was is asked at the end, and once more when you open Towpath half an hour or more afterwards: by then the last minutes no longer stand for the whole. Choose one way and keep to it. The same session gets another number at another time, and only numbers given the same way can be compared.',
} as const;
