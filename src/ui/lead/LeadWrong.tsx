import { leading, leadWrong as words } from '../../copy/lead-day.ts';
import { wrong } from '../../copy/running.ts';
import { useApp } from '../app-context.tsx';
import { EndRow } from '../parts/RunSheet.tsx';
import { WrongCover } from '../parts/WrongCover.tsx';

/** "Something is wrong" with somebody of a group: all are on hold. */
export function LeadWrong() {
  const session = useApp().session;
  const act = () => session.getState();
  return (
    <WrongCover words={words} besides={[words.others, words.pain]}>
      <button type="button" className="button wide" onClick={() => act().allRight()}>
        {wrong.alright}
      </button>
      <EndRow words={leading} onEnd={() => act().end()} />
    </WrongCover>
  );
}
