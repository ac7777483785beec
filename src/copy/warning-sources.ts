/**
 * Where the number behind a warning comes from, for a leader who asks. The full citations stand
 * beside the numbers, in the limits of the review. None of these is a bound of safety.
 */
import type { WarningCode } from '../domain/review/warning.ts';

const WALKING =
  'Walking before and after: the American College of Sports Medicine advises five to ten minutes of light activity each, the Mayo Clinic five and five.';

const SOURCES: Readonly<Record<WarningCode, string>> = {
  'ends-apart':
    'Ending together: that half a minute does not matter is common practice, no source.',
  'warm-up-none': WALKING,
  'warm-up-short': WALKING,
  'cool-down-none': WALKING,
  'cool-down-short': WALKING,
  'main-short': 'Main set: at least half of the session is common practice, no source.',
  'no-recovery':
    'Repeated runs: no number is behind this. A run repeated with no walk is one long run.',
  'sessions-over': 'Sessions in a week: no number of ours, but your own times per week.',
  'session-longer':
    'Longer sessions: told from 30 % and five minutes more than in the four weeks before. The five minutes are common practice, the 30 % contested: in 874 beginners, over 30 % more a week went with somewhat more injuries of one kind, which may be chance (Nielsen 2014), and building up more slowly changed nothing in 532 (Buist 2008).',
  'run-longer':
    'Longer runs: told from 30 % and a minute and a half more. The minute and a half is common practice. In 5,205 runners, single runs over 10 % longer than any in 30 days went with more injuries, most of all when over twice as long (Frandsen 2025). They were experienced, and it was distance: for beginners and minutes it is contested.',
  'run-first':
    'First runs: told when longer than a minute and a half, which is common practice, no source.',
  behind:
    'Groups stand in order, gentle ones first. That up to a minute less does not matter is common practice, no source.',
  'target-jump':
    'Effort targets: a point a week is common practice, no source. Runners rated easy days about a point above what the coach meant (Barnes 2017), so less is hard to tell apart.',
  'step-jump':
    'Hard steps: told from 7 of 10, when over two points more than before. The US guidelines call 5 and 6 moderate, 7 and 8 vigorous; leaving none out is common practice, no source.',
  'not-lighter':
    'A lighter week before the event: a fifth less than in the fullest of the four weeks before is common practice, no source. What was measured was measured in trained racers.',
  'never-continuous':
    'Running on: twenty minutes without a walk, asked of the last group when it mostly runs in the end, and of others that walk a tenth or less, is common practice, no source.',
  'distance-short':
    'Distance: counted with 8 min per km running and 12 min walking, an assumption. The event may be 30 % longer than the farthest session of a group that mostly runs (Frandsen 2025, contested for beginners); for walkers half as long again, which is common practice, no source.',
};

/** Where the number behind a warning comes from, and how far it can be leaned on. */
export const sourceOf = (code: WarningCode): string => SOURCES[code];
