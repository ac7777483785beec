import { before } from '../../copy/before.ts';
import { effortWords } from '../../copy/effort.ts';
import type { Percent } from '../../domain/units.ts';

/** A target in number and words: "5 of 10: whole sentences, breath deeper". */
export function EffortLine({ target }: { target: Percent }) {
  const rating = Math.round(target / 10);
  return <>{before.effortOf(rating, effortWords(rating))}</>;
}
