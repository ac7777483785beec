import type { PackProgress, PackSource } from '../../app/ports.ts';
import { CLIPS } from '../../domain/cues/vocabulary.ts';
import { fail, ok, type Result } from '../../domain/result.ts';
import { checkPack } from '../../domain/track/check-pack.ts';
import type { VoicePack } from '../../domain/track/pack.ts';

/** Where the two files of the voice pack lie. */
export interface PackAddresses {
  readonly manifest: string;
  readonly audio: string;
}

/**
 * Fetches the voice pack whole, so that no byte ranges are asked for, and believes nothing of it:
 * the hash of the audio is compared, then every frame and every clip is looked at.
 */
export function createPackSource(at: PackAddresses): PackSource {
  /** What was damaged is stored as it is: the next try goes past every cache, and mends them. */
  let cache: RequestCache = 'default';
  return {
    async load(progress) {
      const files = await fetchBoth(at, cache, progress);
      if (files === undefined) return fail('missing');
      const checked = await check(files.manifest, files.audio);
      cache = checked.ok ? 'default' : 'reload';
      return checked;
    },
  };
}

async function check(
  manifest: unknown,
  audio: Uint8Array<ArrayBuffer>,
): Promise<Result<VoicePack, 'damaged'>> {
  const checked = checkPack(manifest, audio, Object.keys(CLIPS));
  if (!checked.ok) return fail('damaged');
  const same = (await sha256(audio)) === checked.value.manifest.sha256;
  return same ? ok(checked.value) : fail('damaged');
}

async function fetchBoth(
  at: PackAddresses,
  cache: RequestCache,
  progress: (at: PackProgress) => void,
) {
  try {
    const [manifest, audio] = await Promise.all([
      fetch(at.manifest, { cache }),
      fetch(at.audio, { cache }),
    ]);
    if (!manifest.ok || !audio.ok) return undefined;
    const bytes = await readAll(audio, progress);
    return { manifest: await parse(manifest), audio: bytes };
  } catch {
    return undefined;
  }
}

/** A manifest that is not JSON is a damaged pack, not a missing one. */
const parse = (response: Response): Promise<unknown> => response.json().catch(() => undefined);

async function readAll(
  response: Response,
  progress: (at: PackProgress) => void,
): Promise<Uint8Array<ArrayBuffer>> {
  const total = Number(response.headers.get('content-length')) || 0;
  const reader = response.body?.getReader();
  if (reader === undefined) return new Uint8Array(await response.arrayBuffer());
  const parts: Uint8Array[] = [];
  let loaded = 0;
  for (;;) {
    const { done, value } = await reader.read();
    if (done) break;
    parts.push(value);
    loaded += value.length;
    // A compressed answer is longer unpacked than it says.
    progress({ loaded, total: Math.max(total, loaded) });
  }
  const bytes = new Uint8Array(loaded);
  let end = 0;
  for (const part of parts) {
    bytes.set(part, end);
    end += part.length;
  }
  return bytes;
}

async function sha256(bytes: Uint8Array<ArrayBuffer>): Promise<string> {
  const digest = new Uint8Array(await crypto.subtle.digest('SHA-256', bytes));
  return [...digest].map((byte) => byte.toString(16).padStart(2, '0')).join('');
}
