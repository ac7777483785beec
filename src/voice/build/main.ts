/** Builds the voice pack into `src/voice/pack`, or into a folder given as argument. */
import { fileURLToPath } from 'node:url';
import { buildPack, writePack } from './pack.ts';
import { SETTINGS } from './settings.ts';

const folder = process.argv[2] ?? fileURLToPath(new URL('../pack', import.meta.url));
const pack = buildPack(SETTINGS);
writePack(pack, folder);
const clips = Object.keys(pack.manifest.clips).length;
console.log(`${clips} clips, ${pack.manifest.frames} frames, ${pack.audio.length} bytes`);
