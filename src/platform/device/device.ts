import { createStore } from 'zustand/vanilla';
import type { DeviceState } from '../../app/contract.ts';
import type { Device } from '../../app/ports.ts';
import { isEmbedded, platformOf } from './detect.ts';
import { createWakeLock } from './wake-lock.ts';

/** Milliseconds on, off, on: told apart by their number, for a hand that cannot look. */
const PATTERNS = { harder: [120, 80, 120, 80, 120], easier: [500], same: [150] } as const;

interface InstallPrompt extends Event {
  prompt(): Promise<unknown>;
}

/** What this phone and this browser are and can do. */
export function createDevice(): Device {
  const standalone = isStandalone();
  const surroundings = {
    userAgent: navigator.userAgent,
    maxTouchPoints: navigator.maxTouchPoints,
    standalone,
  };
  const wakeLock = createWakeLock();
  const state = createStore<DeviceState>(() => ({
    installed: standalone,
    platform: platformOf(surroundings),
    embedded: isEmbedded(surroundings),
    canVibrate: typeof navigator.vibrate === 'function',
    canWakeLock: wakeLock.possible,
    canShareFiles: canShareFiles(),
  }));
  offerInstall(state.setState);
  void navigator.storage?.persisted?.().then((persisted) => state.setState({ persisted }));

  return {
    state,
    userAgent: navigator.userAgent,
    stayAwake: wakeLock.want,
    onAwake: wakeLock.onChange,
    vibrate(change) {
      if (document.visibilityState === 'visible') navigator.vibrate?.([...PATTERNS[change]]);
    },
    async persist() {
      const persisted = await navigator.storage?.persist?.().catch(() => false);
      if (persisted !== undefined) state.setState({ persisted });
    },
  };
}

function isStandalone(): boolean {
  const ios = (navigator as Navigator & { standalone?: boolean }).standalone === true;
  return ios || window.matchMedia('(display-mode: standalone)').matches;
}

function canShareFiles(): boolean {
  const sample = new File(['x'], 'x.mp3', { type: 'audio/mpeg' });
  return navigator.canShare?.({ files: [sample] }) ?? false;
}

/** The browser's own offer is kept until the person asks for it; it can be used once. */
function offerInstall(show: (part: Partial<DeviceState>) => void): void {
  window.addEventListener('beforeinstallprompt', (event) => {
    event.preventDefault();
    const prompt = event as InstallPrompt;
    show({
      install: async () => {
        await prompt.prompt();
        show({ install: undefined } as unknown as Partial<DeviceState>);
      },
    });
  });
  window.addEventListener('appinstalled', () => show({ installed: true }));
}
