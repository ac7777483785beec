import { check, refused } from './check-report.ts';

// A reader that goes away early (`| head`) is not an error of the programme.
process.stdout.on('error', () => {});

/** npm runs scripts in the project's folder; relative places are meant from where it was called. */
const base =
  process.env.npm_lifecycle_event === 'check' && process.env.INIT_CWD
    ? process.env.INIT_CWD
    : process.cwd();

const report = await check(process.argv.slice(2), base).catch(() =>
  refused([{ path: '', message: 'The check failed in a way that was not foreseen.' }]),
);
process.exitCode = report.ok ? 0 : 1;
console.log(JSON.stringify(report));
