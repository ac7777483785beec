import type { RawMark, RawMarks } from './raw.ts';
import type { Report } from './report.ts';

/** Words that join steps in speech and not here. */
const FOREIGN: readonly string[] = ['with', 'plus', 'w/'];
/** Whether a mark is one of these words. */
export const isForeign = ({ mark }: RawMark): boolean => FOREIGN.includes(mark);

/** One punctuation mark, and then one word, may stand between two steps. */
export function checkMarks({ marks }: RawMarks, report: Report): void {
  const isWord = (mark: string): boolean => mark === 'then' || mark === 'and' || mark === '&';
  let last = '';
  for (const place of marks) {
    const follows = last === '' || (!isWord(last) && isWord(place.mark));
    if (!follows) report.say('nothing-between', place, { before: last });
    if (isForeign(place)) report.say('bad-separator', place);
    last = place.mark;
  }
}

/** `/` and `and`, which join steps only inside brackets. */
export const joins = (marks: RawMarks | null): boolean =>
  marks !== null && ['/', '&', 'and', ...FOREIGN].includes(marks.marks[0]?.mark ?? '');
