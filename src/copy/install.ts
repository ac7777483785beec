/** Keeping Towpath on the phone. The steps are apart, because they are seldom read. */
export const install = {
  title: 'Keep Towpath on this phone',
  why: 'On the home screen it opens without signal and its record is not tidied away by the browser.',
  now: 'Put it on the home screen',
  installed: 'Towpath is installed on this phone.',
  offlineReady: 'Everything it needs is stored here. It works without signal.',
  offlineComing: 'It is still storing what it needs. Stay online a little longer.',
  show: 'How to do it',
  embedded: {
    title: 'This page is open inside another app',
    body: 'Here the sound stops when the phone locks, and what you do may not be kept.',
    ios: 'Look for a compass or “Open in browser” in the app’s menu, or copy the address and paste it in the browser.',
    android:
      'Open the app’s menu and choose “Open in browser”, or copy the address and paste it in the browser.',
    copy: 'Copy the address',
    copied: 'Address copied.',
  },
} as const;
