import { describe, expect, test } from 'vitest';
import type { Cue } from '../../../src/domain/cues/cue.ts';
import { captionOf, sayActivity, sayDuration } from '../../../src/domain/cues/phrases.ts';
import type { Segment } from '../../../src/domain/timeline/timeline.ts';
import { ms } from '../../../src/domain/units.ts';
import { capital, forAny, isShort, lengthOf, nameOf, openings, segmentOf, spoken } from './laws.ts';
import { anyHeard, isTone, wordsAt } from './voices.ts';

describe('tones and words, for any session, voice and level of talk', () => {
  test('CUE-1 a session starts with a tone at 0 s, words at 1.5 s, and the activity again at 12 s', () => {
    forAny(anyHeard(), (it) => {
      const [first] = it.plan.cues as [Cue];
      expect(first.kind).toBe('start');
      expect(first.clips[0]).toEqual({ at: 0, clip: 'tone.wake' });
      expect(wordsAt(first)).toBe(1500);
      const again = it.plan.cues.filter(({ kind, at }) => kind === 'start' && at > 0);
      const segment = it.timeline.segments[0] as Segment;
      // The longest voice says an activity in 2.3 s: 12 + 2.3 + 3.2 s.
      if (lengthOf(segment) >= 17_500) expect(again).toHaveLength(1);
      for (const cue of again) expect([cue.at, cue.text]).toEqual([12_000, nameOf(segment)]);
    });
  });

  test('CUE-2 tones are exactly where they belong, of the right kind, and nowhere else', () => {
    forAny(anyHeard(), ({ timeline, plan }) => {
      const { segments } = timeline;
      const expected = segments.flatMap((segment, i) => {
        const next = segments[i + 1]?.effort ?? -1;
        const rise = next - segment.effort;
        const long = rise > 0 ? 'tone.rise' : rise < 0 ? 'tone.fall' : 'tone.level';
        const short = (isShort(segment) ? [1] : [3, 2, 1]).map((seconds) => ({
          at: segment.end - seconds * 1000,
          clip: 'tone.short',
        }));
        return [...short, { at: segment.end, clip: long }];
      });
      const tones = plan.cues.flatMap(({ clips }) => clips).filter(({ clip }) => isTone(clip));
      expect(tones).toEqual([{ at: 0, clip: 'tone.wake' }, ...expected]);
    });
  });

  test('CUE-2 a countdown is described by what is counted', () => {
    forAny(anyHeard(), ({ timeline, plan }) => {
      const countdowns = plan.cues.filter(({ kind }) => kind === 'countdown');
      expect(countdowns.map(({ text }) => text)).toEqual(
        timeline.segments.map((segment) => (isShort(segment) ? '1' : '3, 2, 1')),
      );
    });
  });

  test('CUE-3 the words of a boundary begin 0.7 s after it, one cue for each segment', () => {
    forAny(anyHeard(), (it) => {
      const starts = it.timeline.segments.map(({ start }) => (start === 0 ? 1500 : start + 700));
      expect(openings(it).map(wordsAt)).toEqual(starts);
    });
  });

  test('CUE-3 all words within a segment are over 3.2 s before its end, 1.2 s when it is short', () => {
    forAny(anyHeard(), (it) => {
      const late = spoken(it.plan.cues).filter((cue) => {
        const segment = segmentOf(it, cue);
        const by = segment.end - (isShort(segment) ? 1200 : 3200);
        return cue.kind !== 'finish' && (cue.at < segment.start || cue.end > by);
      });
      expect(late).toEqual([]);
    });
  });

  test('CUE-3 the words of a boundary are in their order and true', () => {
    const count = '(\\d+)(?: of (\\d+))?';
    forAny(anyHeard(), (it) => {
      for (const cue of openings(it)) {
        const { part, set, round, ...segment } = segmentOf(it, cue);
        const partName = part === 'main' ? 'Main set' : capital(part);
        const duration = captionOf(sayDuration(ms(segment.end - segment.start)));
        const found = new RegExp(
          `^(?:${partName}\\. )?(?:New sets\\. )?(?:Round ${count}\\. )?(?:Set ${count}\\. )?` +
            `(?:Last set\\. )?(?:Carry on\\. )?${captionOf(sayActivity(segment.activity))}(?: ${duration})?` +
            `(?: Halfway\\.)?(.*)$`,
        ).exec(cue.text);
        expect(found, cue.text).not.toBeNull();
        const [, roundN, roundOf, setN, setOf, rest = ''] = found ?? [];
        if (roundN !== undefined) expect(Number(roundN)).toBe(round?.n);
        if (roundOf !== undefined) expect(Number(roundOf)).toBe(round?.of);
        if (setN !== undefined) expect(Number(setN)).toBe(set?.n);
        if (setOf !== undefined) expect(Number(setOf)).toBe(set?.of);
        if (rest !== '') expect(cue.clips.at(-1)?.clip).toMatch(/^effort\./);
      }
    });
  });

  test('CUE-4 the activity is never dropped', () => {
    forAny(anyHeard(), (it) => {
      const silent = openings(it).filter((cue) => {
        const activity = `activity.${segmentOf(it, cue).activity.replaceAll(' ', '-')}`;
        return cue.clips.filter(({ clip }) => clip === activity).length !== 1;
      });
      expect(silent).toEqual([]);
      expect(openings(it)).toHaveLength(it.timeline.segments.length);
    });
  });

  test('CUE-5 a short segment hears its activity and nothing else', () => {
    forAny(anyHeard(), (it) => {
      for (const segment of it.timeline.segments.filter(isShort)) {
        const heard = spoken(it.plan.cues).filter(
          ({ at, kind }) => segment.start <= at && at < segment.end && kind !== 'finish',
        );
        expect(heard.map(({ text }) => text)).toEqual([nameOf(segment)]);
      }
    });
  });

  test('CUE-8 "Last set" is said at most once in a part, and in the last set of it', () => {
    forAny(anyHeard('usual', 'many'), (it) => {
      const said = openings(it).filter(({ text }) => text.includes('Last set'));
      for (const cue of said) {
        const { part, set, index } = segmentOf(it, cue);
        expect(set?.n).toBe(set?.of);
        const later = it.timeline.segments.slice(index).filter((other) => other.part === part);
        expect(later.every((other) => other.set === undefined || other.set.n === set?.n)).toBe(
          true,
        );
      }
      const parts = said.map((cue) => segmentOf(it, cue).part);
      expect(parts).toEqual([...new Set(parts)]);
    });
  });

  test('CUE-17 the words of the end come 0.7 s after the last tone, last of all, at every level', () => {
    forAny(anyHeard(), ({ plan, timeline }) => {
      const last = plan.cues.at(-1);
      expect(last?.kind).toBe('finish');
      expect(last?.at).toBe(timeline.total + 700);
      expect(plan.cues.filter(({ kind }) => kind === 'finish')).toHaveLength(1);
      expect(plan.total).toBe(timeline.total);
    });
  });

  test('CUE-18 "Carry on" is said only where activity and effort stay the same', () => {
    forAny(anyHeard('usual', 'many'), (it) => {
      for (const cue of openings(it)) {
        if (!cue.text.includes('Carry on')) continue;
        const segment = segmentOf(it, cue);
        const before = it.timeline.segments[segment.index - 1];
        expect([before?.activity, before?.effort]).toEqual([segment.activity, segment.effort]);
      }
    });
  });
});
