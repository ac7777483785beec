import { readFileSync } from 'node:fs';
import { CLIPS } from '../../../src/domain/cues/vocabulary.ts';
import { checkPack } from '../../../src/domain/track/check-pack.ts';
import type { VoicePack } from '../../../src/domain/track/pack.ts';

const folder = new URL('../../../src/voice/pack/', import.meta.url);

/** The voice pack that the app ships, checked. */
export function voicePack(): VoicePack {
  const manifest = JSON.parse(readFileSync(new URL('manifest.json', folder), 'utf8'));
  const audio = new Uint8Array(readFileSync(new URL('voice.bin', folder)));
  const result = checkPack(manifest, audio, Object.keys(CLIPS));
  if (!result.ok) throw new Error(`voice pack: ${JSON.stringify(result.error)}`);
  return result.value;
}
