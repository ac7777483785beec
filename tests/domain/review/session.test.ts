import { describe, expect, it } from 'vitest';
import { effortWords } from '../../../src/copy/effort.ts';
import { programmeWarning } from '../../../src/copy/warning.ts';
import { parsePlan } from '../../../src/domain/programme/parse.ts';
import { readProgramme } from '../../../src/domain/programme/read.ts';
import { reviewOutline } from '../../../src/domain/review/review.ts';
import { checkPlan } from '../../../src/domain/review/session.ts';
import type { ProgrammeWarning } from '../../../src/domain/review/warning.ts';
import type { Json } from '../programme/files.ts';
import { changed } from '../programme/files.ts';

const warnings = (path: string, value: Json): readonly ProgrammeWarning[] => {
  const result = readProgramme(JSON.stringify(changed(path, value)));
  if (!result.ok) throw new Error(JSON.stringify(result.error));
  return reviewOutline(result.value);
};
const said = (path: string, value: Json): readonly (readonly [string, string])[] =>
  warnings(path, value).map((warning) => [warning.path, programmeWarning(warning)]);

const codes = (text: string): readonly string[] => {
  const plan = parsePlan(text);
  if (!plan.ok) throw new Error(plan.error.code);
  return checkPlan(plan.value).map(({ code }) => code);
};

describe('what a leader may want to look at again', () => {
  it('FILE-13 a group that ends before or after the others is told, and by how much', () => {
    expect(
      said(
        'weeks.0.sessions.wren',
        '5 min easy walk; 8 x (1 min walk, 2 min brisk walk); 5 min easy walk',
      ),
    ).toEqual([
      [
        'weeks[0].sessions.wren',
        'The main set ends at 29 min, 3 min after the other groups (26 min).',
      ],
    ]);
    expect(said('weeks.0.sessions.swift', '5 min easy walk; 20 min run; 5 min easy walk')).toEqual([
      [
        'weeks[0].sessions.swift',
        'The main set ends at 25 min, 1 min before the other groups (26 min).',
      ],
    ]);
  });

  it('FILE-13 thirty seconds apart is together, thirty-one is not', () => {
    const swift = (length: string) => `5 min easy walk; ${length} run; 5 min easy walk`;
    expect(said('weeks.0.sessions.swift', swift('21 min 30 s'))).toEqual([]);
    expect(said('weeks.0.sessions.swift', swift('21 min 31 s')).map(([, text]) => text)).toEqual([
      'The main set ends at 26 min 31 s, 31 s after the other groups (26 min).',
    ]);
  });

  it('FILE-13 only the session that is done together has to end together', () => {
    const plans = [
      '5 min easy walk; 16:30 run; 1 min walk; 7:30 run; 5 min easy walk',
      '5 min easy walk; 16 min run; 5 min easy walk',
    ];
    expect(said('weeks.2.sessions.swift', plans)).toEqual([]);
    expect(said('weeks.2.sessions.swift', [...plans].reverse())).toEqual([
      [
        'weeks[2].sessions.swift[0]',
        'The main set ends at 21 min, 9 min before the other groups (30 min).',
      ],
    ]);
  });

  it('FILE-13 five minutes of walking at each end are enough, a second less is told', () => {
    // ACSM: 5 to 10 min of light to moderate activity; Mayo Clinic: 5 and 5 min.
    expect(codes('5 min easy walk; 15 min run; 5 min easy walk')).toEqual([]);
    expect(codes('4 min 59 s easy walk; 15 min run; 5 min easy walk')).toEqual(['warm-up-short']);
    expect(codes('5 min easy walk; 15 min run; 4 min 59 s easy walk')).toEqual(['cool-down-short']);
    expect(codes('15 min run')).toEqual(['warm-up-none', 'cool-down-none']);
    expect(codes('5 min easy jog; 15 min run; 5 min easy walk')).toEqual(['warm-up-none']);
  });

  it('FILE-13 walking in several steps counts together, standing and stretching count as none', () => {
    expect(
      codes('3 min easy walk; 1 min stretch; 2 min walk; 15 min run; 5 min walk; 3 min stretch'),
    ).toEqual([]);
    expect(codes('3 min easy walk; 6 min stretch; 15 min run; 5 min walk')).toEqual([
      'warm-up-short',
    ]);
    expect(codes('30 min walk')).toEqual([]);
    expect(codes('10 x (2 min walk, 1 min brisk walk)')).toEqual([]);
    expect(codes('main: 10 x (2 min walk, 1 min jog)')).toEqual([
      'warm-up-short',
      'cool-down-none',
    ]);
  });

  it('FILE-13 a main set under half of the session is told', () => {
    expect(codes('10 min walk; 20 min run; 10 min walk')).toEqual([]);
    expect(codes('10 min 30 s walk; 20 min run; 10 min walk')).toEqual(['main-short']);
  });

  it('FILE-13 runs repeated with nothing in between are told', () => {
    expect(codes('5 min walk; 6 x 2 min run; 1 min walk; 5 min walk')).toEqual(['no-recovery']);
    expect(codes('5 min walk; 2 x (6 x 1 min run, 3 min walk); 5 min walk')).toEqual([
      'no-recovery',
    ]);
    expect(codes('5 min walk; 6 x (2 min run, 1 min walk); 5 min walk')).toEqual([]);
  });

  it('FILE-13 more sessions than the week has times are told', () => {
    expect(
      said(
        'weeks.5.sessions.wren',
        Array.from(
          { length: 3 },
          () => '5 min easy walk; 3 x (4 min brisk walk, 1 min walk); 5 min easy walk',
        ),
      ),
    ).toEqual([['weeks[5].sessions.wren', '3 sessions are written, and the week has 2 at most.']]);
  });

  it('FILE-13 a reminder in free words is no warning', () => {
    expect(said('reminders', ['Wave at the herons'])).toEqual([]);
  });

  it('FILE-15 effort has the same words by whole points, and none outside the scale', () => {
    expect(Array.from({ length: 11 }, (_, point) => effortWords(point))).toEqual([
      'rest',
      'you could sing',
      'you could sing',
      'you chat freely, breath calm',
      'you chat freely, breath calm',
      'whole sentences, breath deeper',
      'whole sentences, breath deeper',
      'a few words at a time',
      'a few words at a time',
      'a single word',
      'all you have',
    ]);
    expect([effortWords(-3), effortWords(99), effortWords(5.5), effortWords(6.5)]).toEqual([
      'rest',
      'all you have',
      'whole sentences, breath deeper',
      'a few words at a time',
    ]);
  });
});
