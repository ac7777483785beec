import { createHash } from 'node:crypto';
import { readFile } from 'node:fs/promises';
import { CLIPS } from '../domain/cues/vocabulary.ts';
import { fail, type Result } from '../domain/result.ts';
import { checkPack } from '../domain/track/check-pack.ts';
import type { VoicePack } from '../domain/track/pack.ts';

const folder = new URL('../voice/pack/', import.meta.url);

/** The voice pack that lies in this project; the error is a sentence. */
export async function readVoicePack(): Promise<Result<VoicePack, string>> {
  const files = await Promise.all([
    readFile(new URL('manifest.json', folder), 'utf8'),
    readFile(new URL('voice.bin', folder)),
  ]).catch(() => undefined);
  if (files === undefined) return fail('The voice pack is missing: src/voice/pack.');
  const [text, bytes] = files;
  const audio = new Uint8Array(bytes.buffer, bytes.byteOffset, bytes.byteLength);
  const checked = checkPack(jsonOf(text), audio, Object.keys(CLIPS));
  if (!checked.ok) return fail('The voice pack is damaged: src/voice/pack.');
  const hash = createHash('sha256').update(audio).digest('hex');
  if (hash === checked.value.manifest.sha256) return checked;
  return fail('The voice pack is damaged: src/voice/pack.');
}

function jsonOf(text: string): unknown {
  try {
    return JSON.parse(text);
  } catch {
    return undefined;
  }
}
