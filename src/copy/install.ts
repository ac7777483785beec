/** How to get Towpath onto a home screen. In our own words; the steps differ by platform. */
export const install = {
  title: 'Keep Towpath on this phone',
  why: 'On the home screen it opens without signal and its record is not tidied away by the browser.',
  now: 'Put it on the home screen',
  installed: 'Towpath is installed on this phone.',
  offlineReady: 'Everything it needs is stored here. It works without signal.',
  offlineComing: 'It is still storing what it needs. Stay online a little longer.',
  show: 'How to do it',
  ios: {
    title: 'iPhone and iPad',
    steps: [
      'Open this page in the browser, not inside another app.',
      'Tap the share sign: a square with an arrow pointing up.',
      'Choose “Add to Home Screen”, then “Add”.',
      'Open Towpath once from the new icon while you have signal. It keeps its own store, apart from the browser.',
    ],
    tab: 'In a browser tab the sound may stop when the phone locks, and the record may be cleared after a week without a visit. From the home screen it is kept.',
  },
  android: {
    title: 'Android',
    steps: [
      'Open this page in the browser, not inside another app.',
      'Open the browser’s menu: three dots, or three lines.',
      'Choose “Install app” or “Add to home screen”.',
      'Open Towpath once from the new icon while you have signal.',
    ],
  },
  other: {
    title: 'Computer',
    steps: [
      'Towpath works in a browser window here. For a session outdoors, open the same address on your phone.',
    ],
  },
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
