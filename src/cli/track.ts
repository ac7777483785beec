import { writeTrack } from './track-files.ts';
import { readOrder, USAGE } from './track-order.ts';

// A reader that goes away early (`| head`) is not an error of the programme.
process.stdout.on('error', () => {});

/** npm runs scripts in the project's folder; relative places are meant from where it was called. */
const base =
  process.env.npm_lifecycle_event === 'track' && process.env.INIT_CWD
    ? process.env.INIT_CWD
    : process.cwd();

const order = readOrder(process.argv.slice(2));
if (!order.ok) complain(`${order.error} (--help says how)`);
else if (order.value === 'help') console.log(USAGE);
else {
  const written = await writeTrack(order.value, base).catch(() => undefined);
  if (written === undefined) complain('The track could not be made, in a way not foreseen.');
  else if (!written.ok) complain(written.error);
  else console.log(JSON.stringify(written.value));
}

function complain(sentence: string): void {
  process.exitCode = 1;
  console.error(sentence);
}
