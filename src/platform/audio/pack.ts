import type { PackProgress, PackSource } from '../../app/ports.ts';
import { fail } from '../../domain/result.ts';

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
      const check = await fetchCheck();
      if (check === undefined) return fail('missing');
      const checked = await check(files.manifest, files.audio);
      cache = checked.ok ? 'default' : 'reload';
      return checked;
    },
  };
}

/** The vocabulary is large and not needed for the first page: it comes beside the pack. */
const fetchCheck = () =>
  import('./check-files.ts').then(
    ({ checkFiles }) => checkFiles,
    () => undefined,
  );

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
