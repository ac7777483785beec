import { describe, expect, test } from 'vitest';
import type { CuePlan } from '../../../src/domain/cues/cue.ts';
import { composeExport, composeTrack } from '../../../src/domain/track/compose.ts';
import {
  FRAME_BYTES,
  isOurFrame,
  readHeader,
  standsAlone,
} from '../../../src/domain/track/frame.ts';
import { readInfoFrame } from '../../../src/domain/track/info-frame.ts';
import { GUARD } from '../../../src/domain/track/layout.ts';
import { clipLengths, type VoicePack } from '../../../src/domain/track/pack.ts';
import { clipsOf, placements } from '../../../src/domain/track/placement.ts';
import { FRAME_MS, frameOf, ms } from '../../../src/domain/units.ts';
import { audibleFrames } from '../../drivers/sound/audible.ts';
import { type Mark, marksOf, quietAt, syntheticPack } from '../../drivers/sound/synthetic-pack.ts';
import { forEveryTrack } from './arbitraries.ts';

/** The shortest pause at which the frames of two sounds never meet: filter, overlap, rounding. */
const APART = 96;
/** Frames that a clip of the arbitraries may have behind its sound, and the one it ends in. */
const LAST_TAIL_FRAMES = 8;

describe('a composed track, frame by frame', () => {
  test('TRACK-1 is whole frames of one kind, each standing alone, as long as its layout says', () => {
    forEveryTrack(0, 60, (pack, plan) => {
      const { bytes, layout } = composeTrack(plan, pack);
      expect(bytes.length).toBe((layout.total / FRAME_MS + 1) * FRAME_BYTES);
      for (let at = 0; at < bytes.length; at += FRAME_BYTES) {
        if (!isOurFrame(bytes, at) || !standsAlone(bytes, at)) expect.fail(`frame at ${at}`);
        if (readHeader(bytes, at)?.bytes !== FRAME_BYTES) expect.fail(`length at ${at}`);
      }
    });
  });

  test('TRACK-2 begins with an Info frame that says how many frames and bytes of sound follow', () => {
    forEveryTrack(0, 60, (pack, plan) => {
      const { bytes, layout } = composeTrack(plan, pack);
      const frames = layout.total / FRAME_MS;
      expect(readInfoFrame(bytes)).toEqual({ frames, bytes: bytes.length - FRAME_BYTES });
    });
  });

  test('TRACK-4 has every audible frame of every clip, at the frame nearest to its plan', () => {
    forEveryTrack(APART, 60, (pack, plan) => {
      const { bytes } = composeTrack(plan, pack);
      expectHeard(plan.cues, pack, marksOf(bytes));
    });
  });

  test('TRACK-4 has those of every lane and of a wait too, each from its own place', () => {
    forEveryTrack(APART, 60, (pack, plan) => {
      const { holding, oneMore, coolDown } = plan.lanes;
      const leadIn = coolDown ?? holding;
      const { bytes, layout } = composeTrack({ ...plan, leadIn }, pack);
      const before = Math.ceil(leadIn.total / FRAME_MS);
      expect(bytes.length).toBe((before + layout.total / FRAME_MS + 1) * FRAME_BYTES);
      expect(layout.leadIn?.length).toBe(before * FRAME_MS);
      // Below 0, where the session begins.
      expect(layout.leadIn?.sounds).toEqual(
        leadIn.cues.map(({ at, end }) => ({
          start: at - before * FRAME_MS,
          end: end - before * FRAME_MS,
        })),
      );
      const marks = marksOf(bytes);
      const lane = (cues: CuePlan, from: number): void =>
        expectHeard(cues, pack, marks.slice(before + from / FRAME_MS));
      expectHeard(leadIn, pack, marks.slice(0, before));
      lane(plan.cues, 0);
      lane(holding, layout.holding.start);
      lane(oneMore, layout.oneMore.start);
      if (coolDown !== undefined) lane(coolDown, layout.coolDown?.start ?? Number.NaN);
    });
  });

  test('TRACK-5 differs from the quiet loop only in frames of its clips', () => {
    forEveryTrack(0, 60, (pack, plan) => {
      const { bytes, layout } = composeTrack(plan, pack);
      const { holding, oneMore, coolDown } = plan.lanes;
      const planned = [
        ...spans(plan.cues, 0, pack),
        ...spans(holding, layout.holding.start, pack),
        ...spans(oneMore, layout.oneMore.start, pack),
        ...(coolDown ? spans(coolDown, layout.coolDown?.start ?? Number.NaN, pack) : []),
      ];
      marksOf(bytes).forEach((mark, frame) => {
        const inside = planned.some(([from, to]) => from <= frame && frame < to);
        if (!inside && !same(mark, quietAt(frame))) expect.fail(`frame ${frame} is not quiet`);
      });
    });
  });

  test('TRACK-9 is the same for the same plan and pack', () => {
    forEveryTrack(0, 60, (pack, plan) => {
      const [one, two] = [composeTrack(plan, pack), composeTrack(plan, pack)];
      expect(Buffer.compare(one.bytes, two.bytes)).toBe(0);
      expect(one.layout).toEqual(two.layout);
    });
  });

  test('TRACK-10 as an export has the frames of session and tail, and nothing of the lanes', () => {
    forEveryTrack(0, 60, (pack, plan) => {
      const whole = composeTrack(plan, pack);
      const exported = composeExport(plan.cues, pack);
      const frames = exported.length / FRAME_BYTES - 1;
      expect(frames * FRAME_MS).toBe(whole.layout.tail.end);
      expect(readInfoFrame(exported)).toEqual({ frames, bytes: frames * FRAME_BYTES });
      const sound = whole.bytes.subarray(FRAME_BYTES, exported.length);
      expect(Buffer.compare(exported.subarray(FRAME_BYTES), sound)).toBe(0);
    });
  });
});

describe('the quiet of a track', () => {
  const PACK = syntheticPack([{ frames: 10, onsetMs: ms(50), lengthMs: ms(100) }]);
  const nothing = (total: number): CuePlan => ({ cues: [], total: ms(total) });

  test('TRACK-5 is the loop from wherever it lies in the pack', () => {
    const { manifest, audio } = PACK;
    const quiet = { firstFrame: 40, frames: 50 };
    const marks = marksOf(
      composeExport(nothing(60_000), { manifest: { ...manifest, quiet }, audio }),
    );
    expect(marks).toHaveLength(180_000 / FRAME_MS);
    expect(marks).toEqual(marks.map((_, n) => ({ clip: 0, frame: 40 + (n % 50) })));
  });

  test('TRACK-5 is a part of the loop where the track is shorter', () => {
    const marks = marksOf(composeExport(nothing(1000), PACK, ms(0)));
    expect(marks).toEqual(Array.from({ length: Math.ceil(1000 / FRAME_MS) }, (_, n) => quietAt(n)));
  });

  test('TRACK-11 a clip that is not in the pack stops it, and is named', () => {
    const clip = { at: ms(0), clip: 'clip.9' };
    const cue = { kind: 'change', at: ms(0), end: ms(100), clips: [clip], text: '', segment: 0 };
    const cues = [cue] as CuePlan['cues'];
    expect(() => composeExport({ cues, total: ms(1000) }, PACK)).toThrow('clip.9');
  });

  test('TRACK-11 how long a clip is heard is what its pack says', () => {
    expect(clipLengths(PACK.manifest).lengthOf('clip.1')).toBe(100);
  });
});

describe('clips that stand close together', () => {
  test('TRACK-4 never lose an audible frame to a later one, however close it comes', () => {
    forEveryTrack(0, 60, (pack, plan) => {
      const marks = marksOf(composeTrack(plan, pack).bytes);
      const placed = clipsOf(plan.cues);
      placed.forEach(({ at, clip }, i) => {
        const entry = entryOf(pack, clip);
        const before = placed[i - 1];
        const taken = before ? endOf(pack, before.clip, before.at) : 0;
        const start = frameOf((at - entry.onsetMs) as never);
        const audible = audibleFrames(entry);
        for (let own = audible.first; own < audible.end; own++) {
          const frame = start + own;
          if (frame >= Math.max(0, taken)) expect(marks[frame]?.frame).toBe(own);
        }
      });
    });
  });

  test('TRACK-4 are cut off by the next one, and never heard again after it', () => {
    forEveryTrack(0, 60, (pack, { cues }) => {
      const runs = placements(cues, (clip) => entryOf(pack, clip), 0, 10_000);
      runs.slice(1).forEach(({ to }, i) => {
        const before = runs[i];
        expect(to).toBeGreaterThanOrEqual((before?.to ?? 0) + (before?.frames ?? 0));
      });
    });
  });

  test('TRACK-5 leave the end of the track quiet for the whole guard', () => {
    forEveryTrack(0, 60, (pack, plan) => {
      const { bytes, layout } = composeTrack(plan, pack);
      const marks = marksOf(bytes);
      const from = Math.ceil((layout.total - GUARD) / FRAME_MS) + LAST_TAIL_FRAMES;
      for (let frame = from; frame < marks.length; frame++) {
        if (marks[frame]?.clip !== 0) expect.fail(`frame ${frame} is not quiet`);
      }
    });
  });
});

function entryOf(pack: VoicePack, clip: string) {
  const entry = pack.manifest.clips[clip];
  if (!entry) throw new Error(`no ${clip}`);
  return entry;
}

function endOf(pack: VoicePack, clip: string, at: number): number {
  const entry = entryOf(pack, clip);
  return Math.round((at - entry.onsetMs) / FRAME_MS) + audibleFrames(entry).end;
}

/** Frames of the track that a plan's clips may take. */
function spans(plan: CuePlan, shiftMs: number, pack: VoicePack): [number, number][] {
  return clipsOf(plan).map(({ at, clip }) => {
    const entry = entryOf(pack, clip);
    const start = shiftMs / FRAME_MS + Math.round((at - entry.onsetMs) / FRAME_MS);
    return [Math.max(shiftMs / FRAME_MS, start), start + entry.frames];
  });
}

function expectHeard(plan: CuePlan, pack: VoicePack, marks: ReturnType<typeof marksOf>): void {
  for (const { at, clip } of clipsOf(plan)) {
    const entry = entryOf(pack, clip);
    const number = Number(clip.slice('clip.'.length));
    const { first, end } = audibleFrames(entry);
    const last = end - 1;
    const found = marks.findIndex(
      (mark, frame) =>
        same(mark, { clip: number, frame: last }) &&
        Math.abs((frame - last) * FRAME_MS + entry.onsetMs - at) <= FRAME_MS / 2,
    );
    if (found < 0) expect.fail(`${clip} is not within half a frame of ${at}`);
    for (let own = first; own < end; own++) {
      const frame = found - last + own;
      if (frame >= 0) expect(marks[frame]).toEqual({ clip: number, frame: own });
    }
  }
}

const same = (a: Mark, b: Mark): boolean => a.clip === b.clip && a.frame === b.frame;
