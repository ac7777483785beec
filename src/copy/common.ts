/** What stands on more than one screen. */
export const common = {
  name: 'Towpath',
  back: 'Back',
  close: 'Close',
  later: 'Later',
  sessions: 'Sessions',
  done: 'Done',
  settings: 'Settings',
  about: 'About',
  cautions: 'Cautions',
  loading: 'One moment.',
  copyFailed: 'The phone did not allow it: mark the text and copy it.',
  notFound: {
    title: 'Nothing is here',
    body: 'This address leads to no page. The link may be old, or the programme may not be on this phone.',
    go: 'To the start',
  },
  update: {
    waiting: 'A new version of Towpath is ready.',
    apply: 'Use it now',
  },
  underWay: {
    title: 'A session is under way.',
    go: 'Back to it',
  },
  unread:
    'What is stored on this phone cannot be read just now. Nothing was deleted. Close other tabs and windows of Towpath; it is tried again every few seconds.',
  unsaved:
    'This phone cannot store anything just now. What you did is kept in memory and written as soon as that works. Keep this page open.',
  missing: {
    body: 'A part of the app could not be fetched. Nothing is lost. Go online once and try again.',
    again: 'Try again',
  },
  broken: {
    title: 'This page failed',
    body: 'What was saved is safe. A running session goes on in sound.',
    again: 'Open it again',
  },
} as const;
