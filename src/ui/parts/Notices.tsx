import { running } from '../../copy/running.ts';
import { useSession } from '../app-context.tsx';

/** What stands beside a session under way: storage that refuses, a session without sound. */
export function Notices() {
  const unsaved = useSession((s) => s.view.unsaved);
  const silent = useSession((s) => s.view.medium === 'screen');
  return (
    <div role="status">
      {unsaved && <p className="notice small">{running.unsaved}</p>}
      {silent && !unsaved && <p className="small">{running.silent}</p>}
    </div>
  );
}
