import { Link } from 'wouter';
import { nowCopy as words } from '../../copy/now.ts';
import type { Programme } from '../../domain/programme/programme.ts';

/** From a programme's page to everything that belongs to going through it. */
export function Ways({ programme }: { programme: Programme }) {
  const to = [
    ['/back', words.ways.back],
    [`/event/${programme.id}`, words.ways.event],
    [`/tell/${programme.id}`, words.ways.tell],
    ['/records', words.ways.records],
  ] as const;
  return (
    <nav className="row" aria-label={words.ways.all}>
      {to.map(([href, name]) => (
        <Link key={href} href={href} className="text-button">
          {name}
        </Link>
      ))}
    </nav>
  );
}
