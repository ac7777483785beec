import { describe, expect, it } from 'vitest';
import { captionsOf, heardAt } from '../../src/app/session/captions.ts';
import type { Cue, CuePlan } from '../../src/domain/cues/cue.ts';
import { layOut } from '../../src/domain/track/layout.ts';
import { ms } from '../../src/domain/units.ts';

const cue = (kind: Cue['kind'], at: number, end: number, text: string, note?: string): Cue => ({
  kind,
  at: ms(at),
  end: ms(end),
  clips: [],
  text,
  segment: 0,
  ...(note === undefined ? {} : { note }),
});
const plan = (total: number, ...cues: Cue[]): CuePlan => ({ cues, total: ms(total) });

const cues = plan(
  60_000,
  cue('start', 1500, 4000, 'Warm-up. Easy walk.', 'Mind the gate'),
  cue('countdown', 57_000, 60_600, '3, 2, 1'),
  cue('finish', 60_700, 63_000, 'That is the end.'),
);
const lanes = {
  holding: plan(1_800_000, cue('start', 480, 3000, 'Holding.')),
  oneMore: plan(61_000, cue('start', 480, 1000, 'One minute more.')),
  coolDown: plan(300_000, cue('start', 1500, 4000, 'Cool-down. Easy walk. Five minutes.')),
};
const layout = layOut(cues.total, {
  holding: lanes.holding.total,
  oneMore: lanes.oneMore.total,
  coolDown: lanes.coolDown.total,
});
const captions = captionsOf({ cues, lanes }, layout);
const heard = (at: number) => heardAt(captions, ms(at));

describe('what is said is also shown', () => {
  it('PLAY-22 a caption is there from its cue’s first sound until another is said, with its note', () => {
    expect(heard(1499).caption).toBe('');
    expect(heard(1500)).toMatchObject({ caption: 'Warm-up. Easy walk. (Mind the gate)' });
    expect(heard(3999).cue?.kind).toBe('start');
    expect(heard(4000).cue).toBeUndefined();
    expect(heard(40_000).caption).toBe('Warm-up. Easy walk. (Mind the gate)');
  });

  it('PLAY-22 a countdown is shown while it sounds and no longer', () => {
    expect(heard(57_000)).toMatchObject({ caption: '3, 2, 1', cue: { kind: 'countdown' } });
    expect(heard(60_650).caption).toBe('Warm-up. Easy walk. (Mind the gate)');
    expect(heard(61_000).caption).toBe('That is the end.');
  });

  it('PLAY-22 every lane says its own words, and none those of another', () => {
    expect(heard(layout.holding.start).caption).toBe('');
    expect(heard(layout.holding.start + 500).caption).toBe('Holding.');
    expect(heard(layout.oneMore.start + 500).caption).toBe('One minute more.');
    expect(heard((layout.coolDown?.start ?? 0) + 2000).caption).toMatch(/Five minutes/);
    expect(heard(layout.holding.end + 1000).caption).toBe('');
  });
});
