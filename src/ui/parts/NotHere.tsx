import { Link } from 'wouter';
import { common } from '../../copy/common.ts';
import { Screen } from './Screen.tsx';

/** For an address that leads nowhere. */
export function NotHere() {
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
