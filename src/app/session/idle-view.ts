import { ms } from '../../domain/units.ts';
import type { SessionView } from '../session-contract.ts';

/** No control makes sense. */
export const NOTHING_OFFERED: SessionView['offers'] = {
  hold: false,
  goOn: false,
  oneMore: false,
  walkNow: false,
  skip: false,
  back: false,
  coolDown: null,
  undo: null,
};

/** What is shown while there is no session. */
export const IDLE_VIEW: SessionView = {
  state: 'idle',
  medium: 'sound',
  purpose: 'session',
  programmeTitle: '',
  groupName: '',
  planText: '',
  target: 0,
  lane: 'session',
  position: ms(0),
  left: ms(0),
  caption: '',
  offers: NOTHING_OFFERED,
  wrong: false,
  unsaved: false,
  busyElsewhere: false,
  awake: false,
};
