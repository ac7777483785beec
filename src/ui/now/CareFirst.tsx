import { adviceSaid } from '../../copy/advice.ts';
import type { Programme } from '../../domain/programme/programme.ts';
import { useAdvice, useNow, useSituation } from './use-now.ts';

interface CareProps {
  readonly programme: Programme;
  readonly group: string;
}

/** A sign or a niggle in the way, above a session: its page can be opened past the first one. */
export function CareFirst({ programme, group }: CareProps) {
  const situation = useSituation(programme, group);
  const { care } = useNow(situation);
  const said = adviceSaid(useAdvice(situation), programme.groups);
  if (care === undefined) return null;
  return (
    <section className="notice alarm" aria-labelledby="care">
      <h2 id="care">{said.title}</h2>
      {said.why.map((line) => (
        <p key={line}>{line}</p>
      ))}
    </section>
  );
}
