import { type EventBasis, event } from '../../copy/event.ts';
import { type Assumed, EVENT_LIMITS } from '../../domain/back/event-limits.ts';

const {
  walkFast,
  walkSlow,
  runFast,
  runSlow,
  ownPaceSpread,
  measuredFaster,
  measuredSlower,
  trialFaster,
  trialSlower,
  trialPower,
} = EVENT_LIMITS;

/** What each kind of estimate rests on, and how far that can be leaned on. */
const RESTS_ON: Readonly<Record<EventBasis, readonly Assumed[]>> = {
  assumed: [walkFast, walkSlow, runFast, runSlow],
  own: [ownPaceSpread],
  measured: [measuredFaster, measuredSlower],
  trial: [trialPower, trialFaster, trialSlower],
};

const restsOn = (basis: EventBasis, runs: boolean): readonly Assumed[] =>
  basis === 'assumed' && !runs ? [walkFast, walkSlow] : RESTS_ON[basis];

function linesOf({ basis, measured, runs }: AssumptionsProps): readonly string[] {
  const { assumptions } = event;
  switch (basis) {
    case 'assumed':
      return [
        assumptions.walking(walkFast.value, walkSlow.value),
        ...(runs ? [assumptions.running(runFast.value, runSlow.value)] : []),
        ...assumptions.assumed,
      ];
    case 'own':
      return assumptions.own(ownPaceSpread.value);
    case 'measured':
      return assumptions.measured(measured, measuredFaster.value, measuredSlower.value);
    case 'trial':
      return assumptions.trial(trialFaster.value, trialSlower.value);
  }
}

interface AssumptionsProps {
  readonly basis: EventBasis;
  /** Of the session whose turns are taken. */
  readonly week: number;
  /** How many sessions with a distance there are. */
  readonly measured: number;
  /** Whether there is running in that session. */
  readonly runs: boolean;
}

/** What an estimate takes for granted, and, folded away, where its numbers come from. */
export function Assumptions(props: AssumptionsProps) {
  const { basis, week, runs } = props;
  const byTurns = basis === 'assumed' || basis === 'own';
  return (
    <section className="stack rule">
      <h2>{event.assumes}</h2>
      <ul className="bullets">
        {linesOf(props).map((line) => (
          <li key={line}>{line}</li>
        ))}
        {byTurns && <li>{event.session(week)}</li>}
        <li>{event.always}</li>
      </ul>
      <details>
        <summary>{event.sources}</summary>
        <ul className="bullets">
          {restsOn(basis, runs).map((each) => (
            <li key={each.from + each.value} className="small">
              {event.source(each)}
            </li>
          ))}
        </ul>
      </details>
    </section>
  );
}
