/**
 * Where the number behind a warning comes from, for a leader who asks. The full citations stand
 * beside the numbers, in the limits of the review. None of these is a bound of safety.
 */
import type { WarningCode } from '../domain/review/warning.ts';

const WALKING =
  'Five to ten minutes of light activity before and after is what the American College of Sports Medicine advises; the Mayo Clinic says five and five.';

const SOURCES: Readonly<Record<WarningCode, string>> = {
  'ends-apart': 'Half a minute apart still meets at the gate: common practice, no source.',
  'warm-up-none': WALKING,
  'warm-up-short': WALKING,
  'cool-down-none': WALKING,
  'cool-down-short': WALKING,
  'main-short': 'Half of the session for the main set is common practice, no source.',
  'no-recovery':
    'Not a number: a run that is repeated with no walk in it is one long run. Walks between are common practice, no source.',
  'sessions-over': 'Not a number of ours: it is your own times per week.',
  'session-longer':
    'Asked from 30 % and five minutes (common practice) more than in the four weeks before. The evidence is contested: in 874 beginners, over 30 % more a week went with somewhat more injuries of one kind, and that may be chance (Nielsen 2014); a slower build-up changed nothing in 532 (Buist 2008).',
  'run-longer':
    'Asked from 30 % and a minute and a half (common practice) more. In 5,205 runners, single runs over 10 % longer than the longest of 30 days went with more injuries, most over twice as long (Frandsen 2025). They were experienced and counted in distance, so for beginners and minutes it is contested.',
  'run-first':
    'Asked when a first run is longer than a minute and a half: common practice, no source.',
  behind:
    'Groups stand in order from gentle to demanding. Differences of up to a minute are left alone: common practice, no source.',
  'target-jump':
    'One point a week is common practice, no source. Runners rate easy days about a point above what the coach meant (Barnes 2017), so less is hard to tell apart.',
  'step-jump':
    'Asked from 7 of 10 when it is over two points more than before. The US guidelines call 5 and 6 moderate, 7 and 8 vigorous; not to skip one is common practice, no source.',
  'not-lighter':
    'A fifth less than the fullest of the four weeks before is common practice, no source: studies of lighter weeks are of trained racers.',
  'never-continuous':
    'Twenty minutes without a walk, asked of the last group when it mostly runs in the end and of others that walk a tenth or less: common practice, no source.',
  'distance-short':
    'Counted with 8 min a km running and 12 min walking: our assumption, for first runs and easy walks. For a group that mostly runs, the event may be 30 % longer than its farthest session, as for any single run (Frandsen 2025, contested for beginners); for walkers half as long again, common practice, no source.',
};

/** Where the number behind a warning comes from, and how far it can be leaned on. */
export const sourceOf = (code: WarningCode): string => SOURCES[code];
