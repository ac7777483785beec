import { useEffect } from 'react';
import { Link } from 'wouter';
import type { Led } from '../../app/session-contract.ts';
import { leading } from '../../copy/lead-day.ts';
import { useApp, usePublishing } from '../app-context.tsx';
import { boardPageAt } from '../board/addresses.ts';
import { Screen } from '../parts/Screen.tsx';
import { deskAt } from '../workshop/addresses.ts';

const words = leading.over;

/** All groups are done: who came, and back. */
export function LeadOver({ led, ended }: { led: Led; ended: boolean }) {
  const { publishing } = useApp();
  const { id, title } = led.programme;
  useEffect(() => void publishing.getState().load(), [publishing]);
  const isSent = usePublishing((p) => p.sent[id] !== undefined);
  return (
    <Screen title={ended ? words.ended : words.finished} sub={title}>
      <p>{words.body}</p>
      <div className="row">
        {isSent && (
          <Link href={boardPageAt(id, 'list')} className="button primary">
            {words.list}
          </Link>
        )}
        <Link href={deskAt(led.key)} className="button">
          {words.desk}
        </Link>
      </div>
    </Screen>
  );
}
