/// <reference types="trusted-types" />
import type { Workbox } from 'workbox-window';

/** What the updates need of the service worker. */
export interface WorkerPort {
  /** The app and the voice pack are on this phone. */
  onReady(listener: () => void): void;
  /** A new version is installed and waits. */
  onWaiting(listener: () => void): void;
  /** A new version answers for this page, which is still the old one. */
  onTakenOver(listener: () => void): void;
  /** Lets the waiting version in. */
  giveWay(): void;
  /** Asks the server for a new version. */
  look(): void;
}

/** For browsers, pages and builds without a service worker: nothing ever happens. */
const noWorker: WorkerPort = {
  onReady: () => {},
  onWaiting: () => {},
  onTakenOver: () => {},
  giveWay: () => {},
  look: () => {},
};

/** The one script that a page of ours may name: Trusted Types refuse all others. */
function ownWorker(): string {
  const address = './sw.js';
  const policy = window.trustedTypes?.createPolicy('app-sw', {
    createScriptURL: (asked) => {
      if (asked !== address) throw new TypeError(`not our service worker: ${asked}`);
      return asked;
    },
  });
  return (policy?.createScriptURL(address) ?? address) as string;
}

/** Registers the service worker after the page has loaded, so that it never delays the screen. */
export function registerWorker(): WorkerPort {
  if (!import.meta.env.PROD || !('serviceWorker' in navigator)) return noWorker;
  const container = navigator.serviceWorker;
  const waiting: (() => void)[] = [];
  const takenOver: (() => void)[] = [];
  let controlled = container.controller !== null;

  container.addEventListener('controllerchange', () => {
    // The first worker of a first visit replaces nothing.
    if (controlled) for (const listener of takenOver) listener();
    controlled = true;
  });
  const workbox = register(() => {
    for (const listener of waiting) listener();
  });

  return {
    onReady: (listener) => void container.ready.then(listener),
    onWaiting: (listener) => void waiting.push(listener),
    onTakenOver: (listener) => void takenOver.push(listener),
    giveWay: () => void workbox.then((own) => own?.messageSkipWaiting()),
    look: () => void workbox.then((own) => own?.update()).catch(() => {}),
  };
}

async function register(onWaiting: () => void): Promise<Workbox | undefined> {
  try {
    const { Workbox } = await import('workbox-window');
    const workbox = new Workbox(ownWorker(), { updateViaCache: 'none' });
    workbox.addEventListener('waiting', onWaiting);
    await workbox.register();
    return workbox;
  } catch (error) {
    console.warn('No offline use:', error);
    return undefined;
  }
}
