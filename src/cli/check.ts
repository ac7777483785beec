import { check, refused } from './check-report.ts';

// A reader that goes away early (`| head`) is not an error of the programme.
process.stdout.on('error', () => {});

const report = await check(process.argv.slice(2)).catch(() =>
  refused([{ path: '', message: 'The check failed in a way that was not foreseen.' }]),
);
process.exitCode = report.ok ? 0 : 1;
console.log(JSON.stringify(report));
