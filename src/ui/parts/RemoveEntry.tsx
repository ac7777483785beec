import { useState } from 'react';
import { useLocation } from 'wouter';
import { log } from '../../copy/log.ts';
import type { LogEntry } from '../../domain/log/entry.ts';
import { useApp } from '../app-context.tsx';
import { Dialog } from './Dialog.tsx';

/** Takes a session out of the record for good, once the person has said so twice. */
export function RemoveEntry({ entry }: { entry: LogEntry }) {
  const app = useApp();
  const [, go] = useLocation();
  const [asking, setAsking] = useState(false);
  const remove = async () => {
    // First, so that the page of what is gone is not drawn once more.
    go('/done', { replace: true });
    await app.log.getState().remove(entry.id);
  };
  return (
    <div>
      <button type="button" className="text-button" onClick={() => setAsking(true)}>
        {log.remove}
      </button>
      {asking && (
        <Dialog name={log.removeTitle} className="sheet" onLeave={() => setAsking(false)}>
          <div className="stack">
            <h1 tabIndex={-1}>{log.removeTitle}</h1>
            <p>{log.removeBody}</p>
            <div className="pair">
              <button type="button" className="button" onClick={() => void remove()}>
                {log.removeYes}
              </button>
              <button type="button" className="button primary" onClick={() => setAsking(false)}>
                {log.removeNo}
              </button>
            </div>
          </div>
        </Dialog>
      )}
    </div>
  );
}
