import FFT from 'fft.js';
import type { Samples } from './level.ts';

/** The sound to look for, made ready once for all places where it is looked for. */
export interface Pattern {
  readonly samples: Samples;
  readonly energy: number;
  readonly spectra: Map<number, Float64Array>;
}

export const makePattern = (samples: Samples): Pattern => ({
  samples,
  energy: energyOf(samples),
  spectra: new Map(),
});

/**
 * Where in a stretch of a recording a pattern fits best, by normalised cross-correlation:
 * `match` is 1 for the very same sound at any loudness, and 0 for a stranger.
 *
 * @param from first and last place (in samples) at which the pattern may start
 */
export function locate(
  recording: Samples,
  pattern: Pattern,
  from: number,
  to: number,
): { at: number; match: number } {
  const start = Math.max(0, from);
  const length = pattern.samples.length;
  const places = Math.min(to, recording.length - length) - start + 1;
  if (places < 1) return { at: start, match: 0 };
  const stretch = recording.subarray(start, start + places + length - 1);
  const products = correlate(stretch, pattern);
  let windowEnergy = energyOf(stretch.subarray(0, length));
  let best = { at: start, match: 0 };
  for (let place = 0; place < places; place++) {
    const match = (products[2 * place] ?? 0) / Math.sqrt(pattern.energy * windowEnergy || 1);
    if (match > best.match) best = { at: start + place, match };
    windowEnergy += (stretch[place + length] ?? 0) ** 2 - (stretch[place] ?? 0) ** 2;
  }
  return best;
}

/** Sum of products at every shift, as the real parts of interleaved complex numbers. */
function correlate(stretch: Samples, pattern: Pattern): Float64Array {
  const size = 2 ** Math.ceil(Math.log2(stretch.length));
  const fft = transformOf(size);
  const known = pattern.spectra.get(size) ?? spectrum(fft, pattern.samples);
  pattern.spectra.set(size, known);
  const product = spectrum(fft, stretch);
  for (let i = 0; i < product.length; i += 2) {
    const [re, im, knownRe, knownIm] = [product[i], product[i + 1], known[i], known[i + 1]] as [
      number,
      number,
      number,
      number,
    ];
    product[i] = re * knownRe + im * knownIm;
    product[i + 1] = im * knownRe - re * knownIm;
  }
  const out = new Float64Array(2 * size);
  fft.inverseTransform(out as never, product as never);
  return out;
}

const transforms = new Map<number, FFT>();
function transformOf(size: number): FFT {
  const made = transforms.get(size) ?? new FFT(size);
  transforms.set(size, made);
  return made;
}

function spectrum(fft: FFT, samples: Samples): Float64Array {
  const padded = new Float64Array(fft.size);
  padded.set(samples);
  const out = new Float64Array(2 * fft.size);
  fft.realTransform(out as never, padded as never);
  fft.completeSpectrum(out as never);
  return out;
}

function energyOf(samples: Samples): number {
  let sum = 0;
  for (let i = 0; i < samples.length; i++) sum += (samples[i] ?? 0) ** 2;
  return sum;
}
