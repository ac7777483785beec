import { effortOfTen } from '../../copy/effort.ts';
import type { Percent } from '../../domain/units.ts';

/** A target in number and words: "5 of 10: whole sentences, breath deeper". */
export function EffortLine({ target }: { target: Percent }) {
  return <>{effortOfTen(Math.round(target / 10))}</>;
}
