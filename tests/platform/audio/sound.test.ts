// @vitest-environment happy-dom
import { afterEach, beforeEach, describe, expect, it, vi } from 'vitest';
import type { Signal, Transport } from '../../../src/app/ports.ts';
import { ms } from '../../../src/domain/units.ts';
import { createSound } from '../../../src/platform/audio/sound.ts';

/** What an audio element does in a browser, as far as the sound asks for it. */
interface Acting extends HTMLAudioElement {
  ready: number;
  at: number;
  seeks: number;
  isSeeking: boolean;
  plays: number;
  refusal: DOMException | undefined;
}

const elements: Acting[] = [];

/** The element of the page, turned by hand. */
function act(element: HTMLAudioElement): Acting {
  const acting = element as Acting;
  Object.assign(acting, { ready: 0, at: 0, seeks: 0, isSeeking: false, plays: 0 });
  Object.defineProperties(acting, {
    readyState: { get: () => acting.ready },
    seeking: { get: () => acting.isSeeking },
    ended: { get: () => false },
    currentTime: {
      get: () => acting.at,
      set: (to: number) => {
        acting.at = to;
        acting.seeks++;
        acting.isSeeking = true;
      },
    },
  });
  acting.load = () => {};
  acting.pause = () => {};
  acting.play = () => {
    acting.plays++;
    return acting.refusal === undefined ? Promise.resolve() : Promise.reject(acting.refusal);
  };
  elements.push(acting);
  return acting;
}

const say = (element: Acting, type: string): void => void element.dispatchEvent(new Event(type));

function hasMetadata(element: Acting): void {
  element.ready = 1;
  say(element, 'loadedmetadata');
}

function arrived(element: Acting): void {
  element.isSeeking = false;
  say(element, 'seeked');
}

const TRACK = { bytes: new Uint8Array(96), total: ms(600_000) };
const revoked: string[] = [];

beforeEach(() => {
  elements.length = 0;
  revoked.length = 0;
  document.body.replaceChildren();
  const create = document.createElement.bind(document);
  vi.spyOn(document, 'createElement').mockImplementation(((name: string) => {
    const made = create(name);
    return name === 'audio' ? act(made as HTMLAudioElement) : made;
  }) as typeof document.createElement);
  let urls = 0;
  vi.spyOn(URL, 'createObjectURL').mockImplementation(() => `blob:track-${++urls}`);
  vi.spyOn(URL, 'revokeObjectURL').mockImplementation((url) => void revoked.push(url));
});

afterEach(() => vi.restoreAllMocks());

function loaded(): { sound: Transport; element: Acting; signals: Signal[] } {
  const sound = createSound();
  const signals: Signal[] = [];
  sound.listen((signal) => signals.push(signal));
  sound.load(TRACK);
  const element = elements.at(-1) as Acting;
  hasMetadata(element);
  return { sound, element, signals };
}

describe('the audio element', () => {
  it('SND-1 is one, stands in the page unseen, and is silent until it is asked', () => {
    const { element } = loaded();
    const all = document.querySelectorAll('audio');
    expect(all).toHaveLength(1);
    expect(all[0]).toBe(element);
    expect(element.hidden).toBe(true);
    expect(element.plays).toBe(0);
  });

  it('SND-2 keeps one address for its track until it is closed', () => {
    const { sound, element } = loaded();
    sound.play();
    sound.seek(ms(5000));
    sound.rebuild(ms(7000));
    expect(revoked).toEqual([]);
    expect((elements.at(-1) as Acting).src).toBe(element.src || 'blob:track-1');
    sound.close();
    expect(revoked).toEqual(['blob:track-1']);
    expect(document.querySelectorAll('audio')).toHaveLength(1);
  });

  it('SND-3 tells where a seek goes until it has arrived', () => {
    const { sound, element } = loaded();
    element.at = 10;
    expect(sound.place()).toBe(10_000);
    sound.seek(ms(42_000));
    // Some elements tell the old place while they seek.
    element.at = 10;
    expect(sound.place()).toBe(42_000);
    element.at = 42;
    arrived(element);
    element.at = 43.5;
    expect(sound.place()).toBe(43_500);
  });

  it('SND-3 a seek before the track is known is made when it is, and tells its place meanwhile', () => {
    const sound = createSound();
    sound.load(TRACK);
    const element = elements.at(-1) as Acting;
    sound.seek(ms(42_000));
    expect(element.seeks).toBe(0);
    expect(sound.place()).toBe(42_000);
    hasMetadata(element);
    expect(element.at).toBe(42);
    arrived(element);
    expect(sound.place()).toBe(42_000);
  });

  it('SND-3 of two seeks the last one counts', () => {
    const { sound, element } = loaded();
    sound.seek(ms(42_000));
    sound.seek(ms(50_000));
    arrived(element);
    expect(sound.place()).toBe(50_000);
  });

  it('SND-4 an element that lost its track does not say that it is at the start', () => {
    const { sound, element, signals } = loaded();
    element.at = 33;
    expect(sound.place()).toBe(33_000);
    element.ready = 0;
    element.at = 0;
    say(element, 'timeupdate');
    say(element, 'error');
    expect(sound.place()).toBe(33_000);
    expect(signals).toContain('failed');
  });

  it('SND-5 rebuilt it is another element with the same track, at the place, playing', () => {
    const { sound, element, signals } = loaded();
    sound.rebuild(ms(21_000));
    const other = elements.at(-1) as Acting;
    expect(other).not.toBe(element);
    expect(document.querySelectorAll('audio')).toHaveLength(1);
    expect(other.plays).toBe(1);
    expect(sound.place()).toBe(21_000);
    hasMetadata(other);
    expect(other.at).toBe(21);
    const before = signals.length;
    say(element, 'pause');
    say(element, 'error');
    expect(signals.length).toBe(before);
  });

  it('SND-6 says what the element says, and a refused play is a pause', async () => {
    const { sound, element, signals } = loaded();
    for (const type of ['playing', 'timeupdate', 'waiting', 'stalled', 'pause']) say(element, type);
    expect(signals).toEqual(['playing', 'tick', 'tick', 'tick', 'paused']);
    signals.length = 0;
    element.refusal = new DOMException('no', 'NotAllowedError');
    sound.play();
    await vi.waitFor(() => expect(signals).toEqual(['paused']));
    signals.length = 0;
    element.refusal = new DOMException('overtaken', 'AbortError');
    sound.play();
    await Promise.resolve();
    expect(signals).toEqual([]);
  });

  it('SND-6 says what the page says', () => {
    const { signals } = loaded();
    window.dispatchEvent(new Event('pageshow'));
    document.dispatchEvent(new Event('freeze'));
    document.dispatchEvent(new Event('resume'));
    expect(signals).toEqual(['woke', 'frozen', 'woke']);
  });

  it('SND-12 an address that the engine does not read becomes one that holds the sound, and playing goes on', async () => {
    const sound = createSound();
    const signals: Signal[] = [];
    sound.listen((signal) => signals.push(signal));
    sound.load(TRACK);
    const element = elements.at(-1) as Acting;
    element.refusal = new DOMException('not read', 'NotSupportedError');
    sound.seek(ms(42_000));
    sound.play();
    element.refusal = undefined;
    say(element, 'error');
    await vi.waitFor(() => expect(element.src).toMatch(/^data:audio\/mpeg;base64,/));
    expect(element.src.split(',')[1]).toBe(Buffer.from(TRACK.bytes).toString('base64'));
    expect(element.plays).toBe(2);
    expect(revoked).toEqual(['blob:track-1']);
    hasMetadata(element);
    expect(element.at).toBe(42);
    expect(signals).toEqual([]);
    // There is no third way.
    element.ready = 0;
    say(element, 'error');
    expect(signals).toEqual(['failed']);
  });

  it('SND-12 a sound that nobody wants any more is not started by its other address', async () => {
    const sound = createSound();
    sound.load(TRACK);
    const element = elements.at(-1) as Acting;
    sound.play();
    sound.pause();
    say(element, 'error');
    await vi.waitFor(() => expect(element.src).toMatch(/^data:/));
    expect(element.plays).toBe(1);
  });

  it('SND-12 a track that was read once and is lost then is told at once', () => {
    const { element, signals } = loaded();
    say(element, 'error');
    expect(signals).toEqual(['failed']);
    expect(element.src).toBe('blob:track-1');
  });

  it('SND-7 asks for the kind of sound that goes on when a phone is locked', () => {
    const { sound } = loaded();
    const audioSession = { type: 'auto' };
    Object.defineProperty(navigator, 'audioSession', { value: audioSession, configurable: true });
    sound.play();
    expect(audioSession.type).toBe('playback');
    Reflect.deleteProperty(navigator, 'audioSession');
    expect(() => sound.play()).not.toThrow();
  });
});

describe('buttons of the lock screen and of headsets', () => {
  function withKeys() {
    const handlers = new Map<string, (() => void) | null>();
    const setActionHandler = vi.fn((action: string, handler: (() => void) | null) => {
      if (action === 'seekto') throw new TypeError('not here');
      handlers.set(action, handler);
    });
    Object.defineProperty(navigator, 'mediaSession', {
      value: { setActionHandler },
      configurable: true,
    });
    return { handlers, setActionHandler };
  }

  afterEach(() => void Reflect.deleteProperty(navigator, 'mediaSession'));

  it('SND-8 are set anew whenever playing begins, and no seeking takes their place', () => {
    const { handlers, setActionHandler } = withKeys();
    const { element } = loaded();
    expect(setActionHandler).not.toHaveBeenCalled();
    say(element, 'playing');
    handlers.clear();
    say(element, 'playing');
    expect([...handlers.keys()].sort()).toEqual(
      ['nexttrack', 'pause', 'play', 'previoustrack', 'seekbackward', 'seekforward', 'stop'].sort(),
    );
    expect(handlers.get('seekforward')).toBeNull();
    expect(handlers.get('seekbackward')).toBeNull();
  });

  it('SND-8 are told as buttons: what they mean is the session’s to say', () => {
    const { handlers } = withKeys();
    const { element, signals } = loaded();
    say(element, 'playing');
    signals.length = 0;
    for (const action of ['play', 'pause', 'previoustrack', 'nexttrack', 'stop']) {
      handlers.get(action)?.();
    }
    expect(signals).toEqual(['button-play', 'button-pause', 'previous', 'next', 'stop']);
  });
});
