import { findIn } from '../../domain/exchange/find.ts';
import { fail, ok } from '../../domain/result.ts';
import type { BoardState } from '../board-contract.ts';
import type { Codes } from '../exchange-ports.ts';

/**
 * Looks through the camera, and brings every text in that was not seen before, one after another.
 * Parts of a code of several go in together with those that were seen before them.
 */
export async function scanWith(
  codes: Pick<Codes, 'watch'>,
  video: HTMLVideoElement,
  bringIn: BoardState['bringIn'],
): ReturnType<BoardState['scan']> {
  const seen = new Set<string>();
  /** By the code that they are parts of. */
  const parts = new Map<string, string>();
  let going = Promise.resolve();
  const watching = await codes.watch(video, (text) => {
    if (seen.has(text)) return;
    seen.add(text);
    const found = findIn(text);
    const [part] = found.kind === 'parts' ? found.parts : [];
    const content = part === undefined ? text : [parts.get(part.whole), text].join('\n').trim();
    if (part !== undefined) parts.set(part.whole, content);
    going = going.then(() => bringIn([{ name: '', content }]));
  });
  if (watching.ok) return ok(watching.value);
  const { error } = watching;
  return fail(error === 'camera-none' || error === 'camera-refused' ? error : 'not-loaded');
}
