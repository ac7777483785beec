import { fail, ok } from '../../domain/result.ts';
import type { BoardState } from '../board-contract.ts';
import type { Codes } from '../exchange-ports.ts';

/** Looks through the camera, and brings every text in that was not seen before. */
export async function scanWith(
  codes: Pick<Codes, 'watch'>,
  video: HTMLVideoElement,
  bringIn: BoardState['bringIn'],
): ReturnType<BoardState['scan']> {
  const seen = new Set<string>();
  const watching = await codes.watch(video, (text) => {
    if (seen.has(text)) return;
    seen.add(text);
    void bringIn([{ name: '', content: text }]);
  });
  if (watching.ok) return ok(watching.value);
  const { error } = watching;
  return fail(error === 'camera-none' || error === 'camera-refused' ? error : 'not-loaded');
}
