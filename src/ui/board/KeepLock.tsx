import { keep as words } from '../../copy/keep.ts';
import { Passphrase } from '../parts/Passphrase.tsx';
import { useBoardStore } from './board-context.tsx';
import { KeepSaid } from './KeepSaid.tsx';
import { useJob } from './keep-job.ts';

/** All boards in one file that only a passphrase opens. */
export function KeepLock() {
  const store = useBoardStore();
  const job = useJob();
  return (
    <section className="stack rule">
      <h2>{words.lock}</h2>
      <p>{words.lockBody}</p>
      <KeepSaid said={job.said} />
      <Passphrase
        name={words.lockGo}
        label={words.lockLabel}
        onGiven={(passphrase) =>
          void job.run(store.getState().saveLocked(passphrase), words.locked)
        }
      />
    </section>
  );
}
