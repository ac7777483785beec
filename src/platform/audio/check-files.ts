import { CLIPS } from '../../domain/cues/vocabulary.ts';
import { fail, ok, type Result } from '../../domain/result.ts';
import { checkPack } from '../../domain/track/check-pack.ts';
import type { VoicePack } from '../../domain/track/pack.ts';

/** A pack whose every clip is there and whose audio is the audio that the manifest means. */
export async function checkFiles(
  manifest: unknown,
  audio: Uint8Array<ArrayBuffer>,
): Promise<Result<VoicePack, 'damaged'>> {
  const checked = checkPack(manifest, audio, Object.keys(CLIPS));
  if (!checked.ok) return fail('damaged');
  const { subtle } = crypto as { subtle?: SubtleCrypto };
  // Hashing is only there on secure addresses. Frames, clips and lengths were checked all the same.
  if (subtle === undefined) return checked;
  const same = (await sha256(subtle, audio)) === checked.value.manifest.sha256;
  return same ? ok(checked.value) : fail('damaged');
}

async function sha256(subtle: SubtleCrypto, bytes: Uint8Array<ArrayBuffer>): Promise<string> {
  const digest = new Uint8Array(await subtle.digest('SHA-256', bytes));
  return [...digest].map((byte) => byte.toString(16).padStart(2, '0')).join('');
}
