/** For whom the page is open inside another app. */
export const inOtherApp = {
  title: 'This page is open inside another app',
  body: 'Here the sound stops when the phone locks, and what you do may not be kept.',
  ios: 'Look for a compass or “Open in browser” in the app’s menu, or copy the address and paste it in the browser.',
  android:
    'Open the app’s menu and choose “Open in browser”, or copy the address and paste it in the browser.',
  copy: 'Copy the address',
  copied: 'Address copied.',
} as const;
