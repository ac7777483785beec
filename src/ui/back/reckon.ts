import { type EventBasis, event, readTime } from '../../copy/event.ts';
import {
  ASSUMED_SPEEDS,
  type Estimate,
  estimateFromMeasured,
  estimateFromSpeeds,
  estimateFromTrial,
  speedsAround,
} from '../../domain/back/estimate.ts';
import { fail, ok, type Result } from '../../domain/result.ts';
import type { ReckoningProps } from './Reckoning.tsx';

/** What the person typed or chose. */
export interface Given {
  /** Seconds for a kilometre. */
  readonly walk: number;
  readonly run: number;
  readonly trialMetres: string;
  readonly trialTime: string;
}

/** The estimate from what was chosen, or the sentence that says what is in its way. */
export function reckon(
  basis: EventBasis,
  { metres, session, entries, today, given }: ReckoningProps & { readonly given: Given },
): Result<Estimate, string> {
  if (basis === 'measured') {
    const found = estimateFromMeasured(metres, entries, today);
    return found.ok ? found : fail(event.noMeasured);
  }
  if (basis === 'trial') return fromTrial(metres, given);
  const speeds = basis === 'own' ? speedsAround(given.walk, given.run) : ASSUMED_SPEEDS;
  const found = estimateFromSpeeds(metres, session.timeline, speeds);
  return found.ok ? ok(found.value) : fail(event.noMoving);
}

function fromTrial(metres: number, { trialMetres, trialTime }: Given): Result<Estimate, string> {
  const time = readTime(trialTime);
  if (time === undefined || trialMetres.trim() === '') return fail(event.trialAsk);
  const found = estimateFromTrial(metres, { time, metres: Number(trialMetres.replace(',', '.')) });
  return found.ok ? found : fail(event.problem[found.error]);
}
