/** Keeping Towpath on the phone. The steps are apart, because they are seldom read. */
export const install = {
  title: 'Keep Towpath on this phone',
  why: 'On the home screen it opens without signal and its record is not tidied away by the browser.',
  now: 'Put it on the home screen',
  installed: 'Towpath is installed on this phone.',
  offlineReady: 'Everything it needs is stored here. It works without signal.',
  offlineComing: 'It is still storing what it needs. Stay online a little longer.',
  show: 'How to do it',
} as const;
