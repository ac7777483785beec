import { readdirSync, readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import type { Cue, Talk } from '../../../src/domain/cues/cue.ts';
import { planCues } from '../../../src/domain/cues/plan-cues.ts';
import { timelineOf } from './plans.ts';
import { REAL_VOICE } from './voices.ts';

const FOLDER = new URL('../../fixtures/cues/', import.meta.url);

const settingIn = (fixture: string, name: string): string =>
  new RegExp(`^# ${name} *(.*)$`, 'm').exec(fixture)?.[1] ?? '';

const DIRECTIONS: Readonly<Record<string, string>> = {
  'tone.rise': ' up',
  'tone.fall': ' down',
  'tone.level': ' level',
};

/** A cue as the fixture has it: minute, kind, words. */
function lineOf({ at, kind, text, note, clips }: Cue): string {
  const tenths = Math.round(at / 100);
  const minute = `${Math.floor(tenths / 600)}:${((tenths % 600) / 10).toFixed(1).padStart(4, '0')}`;
  const tone = kind === 'countdown' ? (DIRECTIONS[clips.at(-1)?.clip ?? ''] ?? '') : '';
  const words = `${text}${tone}${note === undefined ? '' : ` (${note})`}`;
  return `${minute.padStart(8)}  ${kind.padEnd(9)}  ${words}`;
}

describe('a session as a person would read it', () => {
  test.each(readdirSync(FOLDER))(
    'CUE-14 is heard as it is written in tests/fixtures/cues/%s',
    (name) => {
      const fixture = readFileSync(new URL(name, FOLDER), 'utf8');
      const reminders = settingIn(fixture, 'reminders');
      const timeline = timelineOf(settingIn(fixture, 'plan'));
      const { cues } = planCues(timeline, {
        talk: settingIn(fixture, 'talk') as Talk,
        target: Number(settingIn(fixture, 'target')),
        reminders: reminders === '' ? [] : reminders.split('; '),
        lengths: REAL_VOICE,
      });
      const written = fixture.split('\n').filter((line) => line !== '' && !line.startsWith('#'));
      expect(cues.map(lineOf)).toEqual(written);
      // Each belongs to the part that it is heard in, a countdown to the one that it leads to.
      for (const { kind, segment, at } of cues) {
        const part = timeline.segments[segment];
        const end = kind === 'finish' ? timeline.total + 1000 : (part?.end ?? 0);
        const lead = kind === 'countdown' ? 3000 : 0;
        expect(at).toBeGreaterThanOrEqual((part?.start ?? Infinity) - lead);
        expect(at).toBeLessThan(end);
        if (kind === 'finish') expect(segment).toBe(timeline.segments.length - 1);
      }
    },
  );
});
