import { wrong } from '../../copy/running.ts';
import { useApp, useSession } from '../app-context.tsx';
import { EndRow } from './RunSheet.tsx';
import { WrongCover } from './WrongCover.tsx';

/** "Something is wrong": the session is on hold. */
export function WrongDialog() {
  const session = useApp().session;
  const coolDown = useSession((s) => s.view.offers.coolDown);
  const act = () => session.getState();
  return (
    <WrongCover words={wrong} besides={[wrong.pain]}>
      <div className="pair">
        <button type="button" className="button" onClick={() => act().allRight()}>
          {wrong.alright}
        </button>
        {coolDown !== null && (
          <button
            type="button"
            className="button"
            onClick={() => {
              act().allRight();
              act().toCoolDown();
            }}
          >
            {wrong.coolDown}
          </button>
        )}
      </div>
      <EndRow onEnd={() => act().end()} />
    </WrongCover>
  );
}
