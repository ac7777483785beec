import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { type WebVTTNode, WebVTTParser } from 'webvtt-parser';
import entities from 'webvtt-parser/html-entities.json' with { type: 'json' };
import type { Cue, CuePlan } from '../../../src/domain/cues/cue.ts';
import { TALK_LEVELS } from '../../../src/domain/cues/cue.ts';
import { planCues } from '../../../src/domain/cues/plan-cues.ts';
import { toWebVtt } from '../../../src/domain/exchange/captions.ts';
import { ms } from '../../../src/domain/units.ts';
import { demoTimelines } from '../cues/demo.ts';
import { timelineOf } from '../cues/plans.ts';
import { anyHeard, REAL_VOICE } from '../cues/voices.ts';

/** Read by the independent parser of the W3C's format (npm webvtt-parser, CC0). */
function read(file: string) {
  const { cues, errors } = new WebVTTParser(entities).parse(file, 'captions');
  return {
    errors,
    cues: cues.map(({ id, startTime, endTime, tree }) => ({
      id,
      at: Math.round(startTime * 1000),
      end: Math.round(endTime * 1000),
      text: textOf(tree),
    })),
  };
}

/** The text of a parsed cue; a tag in it would be a mistake, so its name is kept. */
const textOf = ({ type, value, children = [] }: WebVTTNode): string =>
  type === 'text'
    ? (value ?? '')
    : `${type === 'object' ? `<${value}>` : ''}${children.map(textOf).join('')}`;

const cue = (part: Partial<Cue>): Cue => ({
  kind: 'change',
  at: ms(1000),
  end: ms(2000),
  clips: [{ at: ms(1000), clip: 'activity.walk' }],
  text: 'Walk.',
  segment: 0,
  ...part,
});

const planOf = (...cues: Cue[]): CuePlan => ({ cues, total: ms(10_000) });

const shown = ({ text, note }: Cue): string => (note ? `${text}\n(${note})` : text);

describe('captions of a session', () => {
  const KINDS = /^(start|change|remaining|halfway|effort|reminder|finish|countdown)-\d+$/;

  test.each(
    demoTimelines().flatMap((session) => TALK_LEVELS.map((talk) => ({ ...session, talk }))),
  )(
    'CAP-1, CAP-2, CAP-3 $name at $talk is read back as it was planned',
    ({ timeline, talk, options }) => {
      const plan = planCues(timeline, { ...options, talk, lengths: REAL_VOICE });
      const { errors, cues } = read(toWebVtt(plan));
      expect(errors).toEqual([]);
      expect(cues.map(({ at, end, text }) => ({ at, end, text }))).toEqual(
        plan.cues.map((it) => ({ at: it.at, end: it.end, text: shown(it) })),
      );
      expect(cues.map(({ id }) => id.replace(/-\d+$/, ''))).toEqual(
        plan.cues.map(({ kind }) => kind),
      );
      expect(cues.filter(({ id }) => !KINDS.test(id))).toEqual([]);
      expect(new Set(cues.map(({ id }) => id)).size).toBe(cues.length);
    },
  );

  test('CAP-1 any session is read back as it was planned', () => {
    fc.assert(
      fc.property(anyHeard(), ({ plan }) => {
        const { errors, cues } = read(toWebVtt(plan));
        expect(errors).toEqual([]);
        expect(cues.map(({ at, end, text }) => [at, end, text])).toEqual(
          plan.cues.map((it) => [it.at, it.end, shown(it)]),
        );
      }),
      { numRuns: 30 },
    );
  });

  test('CAP-4 the words of a boundary are one caption', () => {
    const timeline = timelineOf('warm-up: 5 min easy walk; main: 7 x (1 min walk, 2 min run)');
    const options = { talk: 'usual', reminders: [], target: 50, lengths: REAL_VOICE } as const;
    const { cues } = read(toWebVtt(planCues(timeline, options)));
    const at = cues.filter((it) => it.at >= 300_000 && it.at < 310_000 && it.id.startsWith('c'));
    expect(at.map(({ id, text }) => [id.replace(/\d+$/, ''), text])).toEqual([
      ['change-', 'Main set. Set 1 of 7. Walk. One minute. You can talk in whole sentences.'],
    ]);
  });

  test('CAP-1 is a WebVTT file to the letter', () => {
    const file = toWebVtt(
      planOf(
        cue({ at: ms(0), end: ms(60), kind: 'start' }),
        cue({ at: ms(3_723_004), end: ms(9_059_999), note: 'Mind the gap' }),
      ),
    );
    expect(file).toBe(
      'WEBVTT\n\nstart-1\n00:00:00.000 --> 00:00:00.060\nWalk.\n\n' +
        'change-2\n01:02:03.004 --> 02:30:59.999\nWalk.\n(Mind the gap)\n',
    );
  });

  test('CAP-1 a plan without cues is an empty file of captions', () => {
    expect(toWebVtt(planOf())).toBe('WEBVTT\n');
    expect(read(toWebVtt(planOf())).errors).toEqual([]);
  });

  test.each([
    ['an arrow', 'a --> b', '(a --> b)'],
    ['tags', '<b>bold</b> <00:01.000> <script>', '(<b>bold</b> <00:01.000> <script>)'],
    ['entities', '&lt; &amp; & &nbsp;', '(&lt; &amp; & &nbsp;)'],
    [
      'line ends and blank lines',
      'one\r\n\r\ntwo\n\n\nthree\rfour\u2028five',
      '(one two three four five)',
    ],
    ['a header of its own', '\n\nWEBVTT\n\nNOTE x', '(WEBVTT NOTE x)'],
    ['zero bytes and control signs', 'a\0b\u0007c\u001b[1m', '(a b c [1m)'],
    ['half a surrogate pair', 'a\ud83db\udc00', '(a\ufffdb\ufffd)'],
    ['other scripts and signs', 'Żółw 🦩 مرحبا', '(Żółw 🦩 مرحبا)'],
    ['nothing but space', ' \n\t ', undefined],
  ])('CAP-3 %s in a note stay text', (_, note, expected) => {
    const { errors, cues } = read(
      toWebVtt(planOf(cue({ note }), cue({ at: ms(3000), end: ms(4000) }))),
    );
    expect(errors).toEqual([]);
    expect(cues.map(({ text }) => text)).toEqual([
      expected === undefined ? 'Walk.' : `Walk.\n${expected}`,
      'Walk.',
    ]);
  });

  test('CAP-3 any text at all makes one caption and no more', () => {
    const nasty = fc.oneof(
      fc.string({ unit: 'binary' }),
      fc
        .array(
          fc.constantFrom('-->', '\n', '\n\n', '\r', '<', '>', '&', 'NOTE', 'WEBVTT', '\0', ' '),
        )
        .map((parts) => parts.join('')),
    );
    fc.assert(
      fc.property(nasty, nasty, (text, note) => {
        const file = toWebVtt(
          planOf(cue({ text: `Walk. ${text}`, note }), cue({ at: ms(3000), end: ms(4000) })),
        );
        const { errors, cues } = read(file);
        expect(errors).toEqual([]);
        expect(cues).toHaveLength(2);
        expect(cues[0]?.text.startsWith('Walk.')).toBe(true);
        expect(cues[0]?.text).not.toMatch(/^<|\n.*\n/);
        expect(cues[1]?.text).toBe('Walk.');
        expect(file.isWellFormed?.() ?? true).toBe(true);
      }),
      { numRuns: 500 },
    );
  });
});
