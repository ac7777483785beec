/** Groups that are led from one screen, chosen and under way. */

import { NOTHING_OFFERED } from '../../../src/app/session/idle-view.ts';
import type { SessionView } from '../../../src/app/session-contract.ts';
import { ms } from '../../../src/domain/units.ts';
import { sheetOf } from '../../../src/domain/workshop/file.ts';
import type { Sheet } from '../../../src/domain/workshop/sheet.ts';
import { DEMO, type FakeOptions, leadViewAt, ledAt } from '../fake-app.ts';
import { EIGHT_GROUPS } from './eight-groups.ts';
import type { GalleryState } from './states.ts';

const read = { cautionsReadOn: '2027-03-01', pocketCheckSkipped: true };
const written = (text: string): Sheet => {
  const read = sheetOf(text);
  if (!read.ok) throw new Error('the programme is none');
  return read.value;
};
export const LED = ledAt('sheet-1');
const EIGHT = ledAt('sheet-1', EIGHT_GROUPS, 1);
/** The agreed Saturday of the demo's first week, ten o'clock. */
const SATURDAY = Date.UTC(2027, 2, 6, 10);
const desk: FakeOptions = { settings: read, sheets: [written(DEMO.text)], now: SATURDAY };
const lead = (view: SessionView, options: FakeOptions = {}): GalleryState => ({
  path: '/lead/sheet-1/day/go',
  options: { ...desk, view, ...options },
});
const sideBySide = leadViewAt(LED, 728_000);
const everyoneHeld: SessionView = {
  ...sideBySide,
  state: 'holding',
  lane: 'holding',
  offers: { ...NOTHING_OFFERED, goOn: true },
};

export const LEAD_STATES: Readonly<Record<string, GalleryState>> = {
  'lead-day': { path: '/lead/sheet-1/day', options: desk },
  'lead-day-missing': {
    path: '/lead/sheet-1/day',
    options: { ...desk, pack: { name: 'missing' } },
  },
  'lead-cut-off': {
    path: '/lead/sheet-1/day',
    options: {
      ...desk,
      session: {
        ledBefore: {
          key: 'sheet-1',
          choice: LED.choice,
          mark: { place: ms(0), wall: SATURDAY - 728_000, holding: false },
        },
      },
    },
  },
  'lead-wait': lead(
    leadViewAt(LED, 0, {
      state: 'waiting',
      caption: 'Two minutes to go.',
      offers: { ...NOTHING_OFFERED, goOn: true },
      wait: { startsAt: SATURDAY + 130_000, left: ms(130_000) },
    }),
  ),
  'lead-start': lead(leadViewAt(LED, 4000)),
  'lead-go': lead(sideBySide),
  'lead-silent': lead({ ...sideBySide, medium: 'screen' }),
  'lead-end': lead(leadViewAt(LED, 1_900_000)),
  'lead-eight': lead(leadViewAt(EIGHT, 728_000), { sheets: [written(EIGHT_GROUPS.text)] }),
  'lead-held': lead(everyoneHeld),
  'lead-taken': lead({ ...everyoneHeld, state: 'interrupted', lane: 'session' }),
  'lead-wrong': lead({ ...everyoneHeld, wrong: true }),
  'lead-over': lead({ ...sideBySide, state: 'finished', offers: NOTHING_OFFERED }),
};
