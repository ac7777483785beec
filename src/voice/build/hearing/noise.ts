/** Numbers from 0 to 1, the same for the same seed. */
export function randomFrom(seed: number): () => number {
  let state = seed >>> 0;
  return () => {
    state = (state + 0x6d2b79f5) >>> 0;
    let t = state;
    t = Math.imul(t ^ (t >>> 15), t | 1);
    t ^= t + Math.imul(t ^ (t >>> 7), t | 61);
    return ((t ^ (t >>> 14)) >>> 0) / 2 ** 32;
  };
}

/** Poles, and the white noise that each lets in, of a filter that falls by 3 dB an octave. */
const PINK = [
  [0.99886, 0.0555179],
  [0.99332, 0.0750759],
  [0.969, 0.153852],
  [0.8665, 0.3104856],
  [0.55, 0.5329522],
  [-0.7616, -0.016898],
] as const;

/**
 * Pink noise of unit power, Gaussian, the same for the same seed. Paul Kellet's filter of a white
 * source, within 0.05 dB of -3 dB an octave above 9 Hz at 44.1 kHz (coefficients from memory;
 * the tests measure the slope at the rate used).
 */
export function pinkNoise(length: number, seed: number): Float64Array {
  const random = randomFrom(seed);
  const state = PINK.map(() => 0);
  let before = 0;
  const noise = Float64Array.from({ length }, () => {
    const white = Math.sqrt(-2 * Math.log(1 - random())) * Math.cos(2 * Math.PI * random());
    let sum = before + white * 0.5362;
    PINK.forEach(([pole, part], i) => {
      state[i] = pole * (state[i] ?? 0) + white * part;
      sum += state[i] ?? 0;
    });
    before = white * 0.115926;
    return sum;
  });
  const power = noise.reduce((sum, s) => sum + s * s, 0) / length;
  return noise.map((s) => s / Math.sqrt(power));
}
