import { describe, expect, test } from 'vitest';
import { captionOf, sayDuration, sayTimeLeft } from '../../../src/domain/cues/phrases.ts';
import { REMINDERS } from '../../../src/domain/cues/reminders.ts';
import { CLIPS } from '../../../src/domain/cues/vocabulary.ts';
import { ms } from '../../../src/domain/units.ts';
import { forAny, nameOf, segmentOf } from './laws.ts';
import { anyHeard, FREE_REMINDERS, isTone } from './voices.ts';

describe('what fills the gaps, for any session and voice', () => {
  test('CUE-11 reminders take turns in the leader’s order and are not repeated soon', () => {
    forAny(anyHeard('usual', 'many'), ({ plan, options }) => {
      const { reminders, talk } = options;
      const catalogue: Readonly<Record<string, string>> = REMINDERS;
      const said = plan.cues.flatMap((cue) => {
        const which = reminders.findIndex((it) => cue.note === it || cue.text === catalogue[it]);
        return cue.kind === 'reminder' && which >= 0 ? [{ which, at: cue.at }] : [];
      });
      expect(said.map(({ which }) => which)).toEqual(said.map((_, i) => i % reminders.length));
      const again = talk === 'usual' ? 600_000 : 360_000;
      said.forEach(({ at }, i) => {
        const before = said[i - reminders.length];
        if (before) expect(at - before.at).toBeGreaterThanOrEqual(again);
      });
    });
  });

  test('CUE-12 a time to go is true', () => {
    forAny(anyHeard('usual', 'many'), (it) => {
      const told = it.plan.cues.filter(({ text }) => text.endsWith('to go.'));
      for (const cue of told) {
        const { end } = segmentOf(it, cue);
        const left = captionOf(sayTimeLeft(ms(end - cue.at)));
        const opening = cue.kind === 'halfway' ? 'Halfway. ' : '';
        expect(cue.text).toBe(`${opening}${nameOf(segmentOf(it, cue))} ${left}`);
        if (cue.kind === 'reminder') expect((end - cue.at) % 5000).toBe(0);
      }
    });
  });

  test('CUE-13 few is tones, activity and duration, and the words at the end', () => {
    forAny(anyHeard('few'), (it) => {
      for (const cue of it.plan.cues) {
        const words = cue.clips.map(({ clip }) => clip).filter((clip) => !isTone(clip));
        if (cue.kind === 'finish') continue;
        if (cue.kind === 'countdown') expect(words).toEqual([]);
        else {
          const { activity, start, end } = segmentOf(it, cue);
          const [first, ...rest] = words;
          expect(first).toBe(`activity.${activity.replaceAll(' ', '-')}`);
          if (rest.length > 0) expect(rest).toEqual(sayDuration(ms(end - start)));
        }
      }
      expect(new Set(it.plan.cues.map(({ kind }) => kind))).not.toContain('remaining');
    });
  });

  test('CUE-15 effort of its own is said in main segments no easier than their neighbours', () => {
    forAny(anyHeard('usual', 'many'), (it) => {
      const { segments } = it.timeline;
      const again = it.options.talk === 'usual' ? 600_000 : 360_000;
      const told = it.plan.cues.filter(({ clips }) => clips.at(-1)?.clip.startsWith('effort.'));
      told.forEach((cue, i) => {
        if (cue.kind !== 'effort') return;
        const segment = segmentOf(it, cue);
        expect(segment.part).toBe('main');
        for (const beside of [segments[segment.index - 1], segments[segment.index + 1]]) {
          if (beside?.part === 'main') expect(beside.effort).toBeLessThanOrEqual(segment.effort);
        }
        const before = told[i - 1];
        if (before) expect(cue.at - before.at).toBeGreaterThanOrEqual(again);
        const after = told[i + 1];
        if (after) expect(after.at - cue.at).toBeGreaterThanOrEqual(again / 2);
      });
    });
  });

  test('CUE-16 only the voice’s vocabulary is spoken: free words are notes', () => {
    forAny(anyHeard(), (it) => {
      for (const cue of it.plan.cues) {
        if (cue.kind === 'change') expect(cue.note).toBe(segmentOf(it, cue).note);
      }
      const clips = it.plan.cues.flatMap((cue) => cue.clips.map(({ clip }) => clip));
      expect(clips.filter((clip) => CLIPS[clip] === undefined)).toEqual([]);
      const texts = it.plan.cues.map(({ text }) => text).join(' ');
      expect(FREE_REMINDERS.filter((free) => texts.includes(free))).toEqual([]);
    });
  });
});
