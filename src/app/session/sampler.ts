import { ms } from '../../domain/units.ts';
import type { PackHolder } from '../pack.ts';
import type { Transport } from '../ports.ts';
import { prepareSample } from './score-plan.ts';

/** Lets a person hear a cue before the session, through the element that will carry it. */
export interface Sampler {
  /** Inside a tap. */
  play(): void;
  /** Falls silent. True when the sample took the place of what was loaded before. */
  stop(): boolean;
}

/** Plays a cue through the sound that will carry the session. */
export function createSampler(sound: Transport, pack: PackHolder): Sampler {
  let stopListening: (() => void) | undefined;
  let tookOver = false;

  function quiet(): void {
    if (stopListening === undefined) return;
    stopListening();
    stopListening = undefined;
    sound.pause();
  }

  return {
    play() {
      const current = pack.current();
      if (current === undefined) return;
      quiet();
      const { bytes, heardUntil } = prepareSample(current);
      tookOver = true;
      sound.load({ bytes, total: ms(heardUntil) });
      stopListening = sound.listen(() => {
        if (sound.place() >= heardUntil) quiet();
      });
      sound.play();
    },
    stop() {
      quiet();
      const took = tookOver;
      tookOver = false;
      return took;
    },
  };
}
