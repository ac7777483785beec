import type { Wish } from '../../domain/session/event.ts';
import type { SessionStore } from '../session-contract.ts';

type Wishes = Pick<
  SessionStore,
  | 'hold'
  | 'goOn'
  | 'oneMore'
  | 'walkNow'
  | 'skip'
  | 'back'
  | 'undo'
  | 'toCoolDown'
  | 'end'
  | 'somethingIsWrong'
  | 'allRight'
  | 'afterGap'
>;

/** What a person may ask of a running session, in the words of its events. */
export function wishesOf(ask: (type: Wish) => void): Wishes {
  const wish = (type: Wish) => (): void => ask(type);
  return {
    hold: wish('hold'),
    goOn: wish('go-on'),
    oneMore: wish('one-more'),
    walkNow: wish('walk-now'),
    skip: wish('skip'),
    back: wish('back'),
    undo: wish('undo'),
    toCoolDown: wish('cool-down'),
    end: wish('end'),
    somethingIsWrong: wish('wrong'),
    allRight: wish('all-right'),
    afterGap: (answer) => ask(answer === 'go-on' ? 'leave-gap' : 'catch-up'),
  };
}
