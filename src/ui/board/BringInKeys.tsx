import { Link } from 'wouter';
import { bringIn as words } from '../../copy/bring-in.ts';
import { RestoreKeys } from '../parts/LeaderKeys.tsx';

/** Where the keys that open answers are not: why, and what to do. @param byLink somebody tapped an answer's link */
export function BringInKeys({ byLink }: { byLink: boolean }) {
  const { forLeader, noKeys } = words;
  const said = byLink
    ? [forLeader.body, forLeader.hand, forLeader.lead]
    : [noKeys.body, noKeys.never, noKeys.other];
  return (
    <section className="notice">
      {!byLink && <h2>{noKeys.title}</h2>}
      {said.map((line) => (
        <p key={line}>{line}</p>
      ))}
      <RestoreKeys />
      <Link href="/records" className="text-button">
        {noKeys.records}
      </Link>
    </section>
  );
}
