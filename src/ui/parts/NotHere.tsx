import { Link } from 'wouter';
import { common } from '../../copy/common.ts';
import { useProgrammes } from '../app-context.tsx';
import { Screen } from './Screen.tsx';

/** For an address that leads nowhere; which is not known before what is stored has been read. */
export function NotHere() {
  const ready = useProgrammes((p) => p.ready);
  if (!ready) return <p className="for-readers">{common.loading}</p>;
  return (
    <Screen title={common.notFound.title}>
      <p>{common.notFound.body}</p>
      <div>
        <Link href="/" className="button">
          {common.notFound.go}
        </Link>
      </div>
    </Screen>
  );
}
