/** `npm run demo`: writes what the reader makes of the programme that the app starts with. */
import { writeFileSync } from 'node:fs';
import { DEMO_PROGRAMME_TEXT } from '../src/app/demo/demo.ts';
import { readProgramme } from '../src/domain/programme/read.ts';

const read = readProgramme(DEMO_PROGRAMME_TEXT);
if (!read.ok) throw new Error(`the demo cannot be read: ${JSON.stringify(read)}`);
const file = new URL('../src/app/demo/heron-loop.generated.json', import.meta.url);
writeFileSync(file, `${JSON.stringify(read.value, null, 1)}\n`);
