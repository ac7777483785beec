/** How to get Towpath onto a home screen, by platform. In our own words. */
export const installSteps = {
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
} as const;
