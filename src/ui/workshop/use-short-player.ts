import { type AudioHTMLAttributes, type RefObject, useEffect, useRef, useState } from 'react';
import type { Hearing } from '../../app/contract.ts';
import { sessionPlace, shortPlace } from '../../domain/cues/squeeze.ts';
import { type Ms, ms, secondsOf } from '../../domain/units.ts';

interface ShortPlayer {
  readonly ref: RefObject<HTMLAudioElement | null>;
  readonly listeners: AudioHTMLAttributes<HTMLAudioElement>;
  /** In the short track. */
  readonly place: Ms;
  readonly playing: boolean;
  /** The browser would not play. */
  readonly refused: boolean;
  /** Inside a tap: from where it is, or from a place. Without sound only the place moves. */
  play(from?: Ms): void;
  pause(): void;
}

/**
 * One audio element with the short track in it. Its place is what the page shows; a change of the
 * track keeps the place in the session.
 */
export function useShortPlayer(hearing: Hearing | undefined): ShortPlayer {
  const ref = useRef<HTMLAudioElement>(null);
  const inSession = useRef<Ms>(ms(0));
  const [place, setPlace] = useState(ms(0));
  const [playing, setPlaying] = useState(false);
  const [refused, setRefused] = useState(false);

  useEffect(() => {
    const element = ref.current;
    if (element === null || hearing === undefined) return;
    const start = shortPlace(hearing.short, inSession.current);
    setPlace(start);
    if (hearing.sound === undefined) return;
    const url = URL.createObjectURL(new Blob([hearing.sound], { type: 'audio/mpeg' }));
    element.src = url;
    element.currentTime = secondsOf(start);
    return () => {
      element.pause();
      element.removeAttribute('src');
      element.load();
      URL.revokeObjectURL(url);
      setPlaying(false);
    };
  }, [hearing]);

  function show(at: Ms): void {
    setPlace(at);
    if (hearing !== undefined) inSession.current = sessionPlace(hearing.short, at);
  }

  function look(): void {
    const element = ref.current;
    if (element?.hasAttribute('src')) show(ms(element.currentTime * 1000));
  }

  return {
    ref,
    place,
    playing,
    refused,
    listeners: {
      onTimeUpdate: look,
      onSeeked: look,
      onPlay: () => setPlaying(true),
      onPause: () => setPlaying(false),
      onEnded: () => setPlaying(false),
      onError: () => setRefused(ref.current?.hasAttribute('src') === true),
    },
    play(from) {
      if (from !== undefined) show(from);
      const element = ref.current;
      if (element === null || hearing?.sound === undefined) return;
      if (from !== undefined) element.currentTime = secondsOf(from);
      setRefused(false);
      element.play().catch((error: unknown) => {
        // A play that a later pause overtook is no refusal.
        if (!(error instanceof DOMException && error.name === 'AbortError')) setRefused(true);
      });
    },
    pause: () => ref.current?.pause(),
  };
}
