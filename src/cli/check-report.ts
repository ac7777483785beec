import { resolve } from 'node:path';
import { programmeSentence } from '../copy/programme.ts';
import { programmeWarning } from '../copy/warning.ts';
import type { Programme } from '../domain/programme/programme.ts';
import { readProgramme } from '../domain/programme/read.ts';
import { planTotals } from '../domain/programme/totals.ts';
import { reviewOutline } from '../domain/review/review.ts';
import { textOf } from './text-of.ts';

interface Line {
  readonly path: string;
  readonly message: string;
}

/** What `check` prints, on one line. Weeks and sessions count from 1, paths from 0. */
export interface CheckReport {
  readonly ok: boolean;
  readonly errors: readonly Line[];
  readonly warnings: readonly Line[];
  readonly totals: readonly {
    readonly week: number;
    readonly group: string;
    readonly session: number;
    readonly seconds: number;
    readonly mainSeconds: number;
    readonly runSeconds: number;
  }[];
}

/** A report that says only why the file was not taken. */
export const refused = (errors: readonly Line[]): CheckReport => ({
  ok: false,
  errors,
  warnings: [],
  totals: [],
});

const totalsOf = ({ weeks, groups }: Programme): CheckReport['totals'] =>
  weeks.flatMap(({ sessions }, week) =>
    groups.flatMap(({ id }) =>
      (sessions[id] ?? []).map(({ plan }, session) => ({
        week: week + 1,
        group: id,
        session: session + 1,
        ...planTotals(plan),
      })),
    ),
  );

/** Errors, warnings and totals of a programme file's text. */
export function checkText(text: string): CheckReport {
  const programme = readProgramme(text);
  if (!programme.ok)
    return refused(
      programme.error.map((problem) => ({
        path: problem.path,
        message: programmeSentence(problem),
      })),
    );
  return {
    ok: true,
    errors: [],
    warnings: reviewOutline(programme.value).map((warning) => ({
      path: warning.path,
      message: programmeWarning(warning),
    })),
    totals: totalsOf(programme.value),
  };
}

/** The report of a command line's arguments: one file, meant from the folder `base`. */
export async function check(args: readonly string[], base: string): Promise<CheckReport> {
  const [file] = args;
  if (file === undefined || args.length > 1 || file === '')
    return refused([{ path: '', message: 'Give one programme file: npm run check -- FILE' }]);
  const text = await textOf(resolve(base, file));
  return text.ok ? checkText(text.value) : refused([{ path: '', message: text.error }]);
}
