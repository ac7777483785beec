import { expect, test } from 'vitest';
import { composeInProcess } from '../../bench/compose.ts';

test('TRACK-12 composing holds the track once and nothing else of its size', () => {
  const { trackBytes, peakBytes, peakWithBlobBytes } = composeInProcess(60);
  expect(peakBytes / trackBytes).toBeGreaterThan(0.9);
  expect(peakBytes / trackBytes).toBeLessThan(1.2);
  expect(peakWithBlobBytes / trackBytes).toBeLessThan(2.2);
});
