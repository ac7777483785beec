import type { Signal, Transport } from '../../app/ports.ts';
import { type Ms, ms, secondsOf } from '../../domain/units.ts';
import { inAddress } from './in-address.ts';
import { listenToMediaKeys } from './media-keys.ts';
import { listenToPage } from './page.ts';

/** Newer browsers let a page say what its sound is for; without it an iPhone may fall silent on lock. */
interface AudioSessionNavigator extends Navigator {
  readonly audioSession?: { type: string };
}

/** Length and place are known (HTML: media elements, ready states). */
const HAVE_METADATA = 1;

/**
 * The session's sound: one audio element in the page, and its place is the session's clock. The
 * track is one Blob with one address, kept until it is closed; where the engine does not read that
 * one, the address holds the sound itself. Nothing here starts sound by itself: `play` and `rebuild` are called in answer to a person, `seek` moves what is heard.
 */
export function createSound(): Transport {
  const listeners = new Set<(signal: Signal) => void>();
  const say = (signal: Signal): void => {
    for (const listener of [...listeners]) listener(signal);
  };
  let element = newElement();
  let stopListening = listenTo();
  let track: { readonly blob: Blob; readonly url: string; readonly isWhole: boolean } | undefined;
  /** What was asked for last, so that it goes on when another address was needed. */
  let isToPlay = false;
  /** Where a seek goes that has not arrived: until then the element tells the old place. */
  let goingTo: { readonly to: Ms; readonly asked: boolean } | undefined;
  /** An element that lost its track says that it is at 0: then the last known place holds. */
  let lastPlace = ms(0);

  listenToPage(say);
  const keys = listenToMediaKeys(say);

  function listenTo(): () => void {
    const own = element;
    let isRead = false;
    const on = (type: string, heard: () => void): (() => void) => {
      own.addEventListener(type, heard);
      return () => own.removeEventListener(type, heard);
    };
    const stops = [
      on('timeupdate', () => say('tick')),
      on('waiting', () => say('tick')),
      on('stalled', () => say('tick')),
      on('playing', () => {
        // An iPhone loses the buttons when playing begins.
        keys.apply();
        say('playing');
      }),
      on('pause', () => say(own.ended ? 'tick' : 'paused')),
      on('error', () => {
        if (track === undefined) return;
        if (isRead || track.isWhole) say('failed');
        else void takeWhole();
      }),
      on('loadedmetadata', () => {
        isRead = true;
        arrive();
      }),
      on('seeked', () => say('tick')),
    ];
    return () => {
      for (const stop of stops) stop();
    };
  }

  /** WebKitGTK refuses the address of a Blob in some starts, and reads one that holds the sound. */
  async function takeWhole(): Promise<void> {
    const refused = track;
    if (refused === undefined) return;
    const url = await inAddress(refused.blob).catch(() => undefined);
    if (track !== refused) return;
    if (url === undefined) {
      say('failed');
      return;
    }
    URL.revokeObjectURL(refused.url);
    track = { blob: refused.blob, url, isWhole: true };
    element.src = url;
    element.load();
    if (isToPlay) play();
  }

  /** A place that was asked for before the element knew its track. */
  function arrive(): void {
    if (goingTo === undefined) return;
    goingTo = { ...goingTo, asked: true };
    element.currentTime = secondsOf(goingTo.to);
  }

  function seek(to: Ms): void {
    goingTo = { to, asked: false };
    if (element.readyState >= HAVE_METADATA) arrive();
  }

  function play(): void {
    isToPlay = true;
    const { audioSession } = navigator as AudioSessionNavigator;
    if (audioSession !== undefined) audioSession.type = 'playback';
    element.play().catch((error: unknown) => {
      // A play that a later pause or load overtook is no refusal, and an address that is not read
      // is an error of its own.
      const name = error instanceof DOMException ? error.name : '';
      if (name !== 'AbortError' && name !== 'NotSupportedError') say('paused');
    });
  }

  function drop(): void {
    stopListening();
    element.pause();
    element.removeAttribute('src');
    element.load();
    element.remove();
  }

  function place(): Ms {
    if (goingTo?.asked && !element.seeking) goingTo = undefined;
    if (goingTo !== undefined) return goingTo.to;
    if (element.readyState < HAVE_METADATA) return lastPlace;
    lastPlace = ms(element.currentTime * 1000);
    return lastPlace;
  }

  function close(): void {
    goingTo = undefined;
    isToPlay = false;
    lastPlace = ms(0);
    if (track === undefined) return;
    drop();
    URL.revokeObjectURL(track.url);
    track = undefined;
    element = newElement();
    stopListening = listenTo();
  }

  return {
    load({ bytes }) {
      close();
      if (bytes === undefined) return;
      const blob = new Blob([bytes], { type: 'audio/mpeg' });
      track = { blob, url: URL.createObjectURL(blob), isWhole: false };
      element.src = track.url;
      element.load();
    },
    play,
    pause() {
      isToPlay = false;
      element.pause();
    },
    seek,
    rebuild(at) {
      if (track === undefined) return;
      drop();
      element = newElement();
      stopListening = listenTo();
      element.src = track.url;
      goingTo = undefined;
      seek(at);
      play();
    },
    place,
    close,
    listen(listener) {
      listeners.add(listener);
      return () => listeners.delete(listener);
    },
  };
}

/** In the page, though not to be seen: some phones let go of an element that stands nowhere. */
function newElement(): HTMLAudioElement {
  const element = document.createElement('audio');
  element.hidden = true;
  element.preload = 'auto';
  document.body.append(element);
  return element;
}
