/** For whoever hears a session before sending or doing it. */
export const hear = {
  sub: (group: string, length: string): string => `${group}, ${length}. The quiet is skipped.`,
  play: 'Play',
  pause: 'Pause',
  previous: 'Previous',
  next: 'Next',
  talkHelp: 'Only for listening here. Everyone chooses their own in Settings.',
  said: 'What is said',
  saidHelp: 'Tap a line to hear it.',
  note: (text: string): string => `Shown, not spoken: ${text}`,
  underWay: 'A session is running on this phone. Hear this one when it is over.',
  missing: 'The voice is not on this phone, so there is nothing to hear yet. The words are here.',
  damaged: 'The voice on this phone is damaged, so nothing is played. The words are here.',
  composing: 'Putting the words together',
  refused: 'This phone did not play it. Tap Play again.',
  notFetched: 'A part of Towpath is not on this phone yet. Open it where you have signal.',
  saveTitle: 'For someone without the app',
  saveHelp:
    'The whole session, quiet included, as one sound file. It plays anywhere. The words are a file beside it, for players that show them.',
  saveMp3: 'Save the sound (.mp3)',
  saveVtt: 'Save the words (.vtt)',
  saveFailed: 'The file could not be made. Try again where you have signal.',
} as const;
