import { formatPlan } from '../../src/domain/programme/format.ts';
import { parsePlan } from '../../src/domain/programme/parse.ts';
import { PLAN_CODES } from '../../src/domain/programme/problem.ts';
import { replay } from '../../src/domain/session/journal.ts';
import { checkPack } from '../../src/domain/track/check-pack.ts';
import { FRAME_BYTES } from '../../src/domain/track/frame.ts';
import { ms } from '../../src/domain/units.ts';
import { fileOf, sheetOf } from '../../src/domain/workshop/file.ts';
import { Phone } from '../drivers/player.ts';
import { EASY_DAY, scoreOf } from '../drivers/sessions.ts';
import { syntheticPack } from '../drivers/sound/synthetic-pack.ts';
import type { Decoder, Written } from './decoders.ts';
import { hostileJson } from './hostile.ts';
import type { Seeds } from './mutate.ts';
import { polluted, scratchText } from './scratch.ts';

const PLANS = [
  '5 min easy walk; 7 x (1 min walk, 2 min run); 5 min easy walk',
  "warm-up: 6' walk; main: 4 x (4:00 jog + 90 s walk); cool-down: 4 min easy walk",
  '10 min walk @ 40%; 3 x (2 x (30 s run, 30 s walk) "by the gate", 2 min walk); 3 min walk',
];
const WORDS = [
  '7 x (',
  ')',
  '; ',
  '1 h',
  '0.5 min',
  '99999 s',
  "'",
  ':',
  ' run',
  'main:',
  '@',
  '%',
];

/** A session as it is typed. */
export const shorthandDecoder = (_: Seeds): Decoder => ({
  name: 'session in shorthand',
  share: 200,
  make(random) {
    const own = Array.from({ length: random.below(60) }, () => random.pick(WORDS)).join('');
    const text = random.chance(0.2) ? own : scratchText(random.pick(PLANS), random);
    return { kind: 'shorthand', content: random.chance(0.05) ? text.repeat(60) : text };
  },
  look({ content }) {
    const text = String(content);
    const read = parsePlan(text);
    if (!read.ok) {
      const { code } = read.error;
      return PLAN_CODES.includes(code) ? polluted() : `unknown reason ${code}`;
    }
    const again = parsePlan(formatPlan(read.value));
    if (!again.ok) return 'what was written out cannot be read';
    return JSON.stringify(again.value) === JSON.stringify(read.value) ? polluted() : 'another plan';
  },
});

/** A programme file that a leader opens to write on. */
export const sheetDecoder = ({ texts }: Seeds): Decoder => ({
  name: 'programme to write on',
  share: 60,
  make(random) {
    const file = random.pick(texts);
    const content = random.chance(0.5)
      ? hostileJson(JSON.parse(file), random)
      : scratchText(file, random);
    return { kind: 'sheet', content };
  },
  look({ content }) {
    const read = sheetOf(String(content));
    if (!read.ok) return read.error.length > 0 ? polluted() : 'refused without a reason';
    const again = sheetOf(fileOf(read.value));
    if (!again.ok) return `its own file is refused: ${again.error[0]?.code}`;
    return polluted();
  },
});

const pack = syntheticPack([
  { frames: 10, onsetMs: ms(96), lengthMs: ms(120) },
  { frames: 40, onsetMs: ms(96), lengthMs: ms(700) },
]);

/** A voice pack as a host or a disk may give it. */
export const packDecoder = (): Decoder<Written & { readonly audio: Uint8Array }> => ({
  name: 'voice pack',
  share: 60,
  make(random) {
    const audio = Uint8Array.from(pack.audio);
    if (random.chance(0.5)) audio[random.below(audio.length)] = random.below(256);
    const content = hostileJson(pack.manifest, random);
    return { kind: 'pack', content, audio: random.chance(0.2) ? audio.slice(0, -1) : audio };
  },
  look({ content, audio }) {
    let manifest: unknown;
    try {
      manifest = JSON.parse(String(content));
    } catch {
      return undefined;
    }
    const checked = checkPack(manifest, audio, ['clip.1']);
    if (!checked.ok) return checked.error.code.length > 0 ? polluted() : 'no reason';
    for (const { firstFrame, frames } of Object.values(checked.value.manifest.clips))
      if ((firstFrame + frames) * FRAME_BYTES > audio.length) return 'a clip past the end';
    return polluted();
  },
});

const JOURNALS = (() => {
  const plain = new Phone(scoreOf(EASY_DAY)).start().pass(100);
  const held = new Phone(scoreOf(EASY_DAY)).start().pass(60).say('hold').pass(30).take().pass(20);
  const more = new Phone(scoreOf(EASY_DAY)).start().pass(90).say('skip').pass(300);
  return [plain, held, more].map(({ journal }) => [...journal]);
})();

/** A session's journal of which lines were lost, doubled or put in another order. */
export const journalDecoder = (): Decoder => ({
  name: 'journal read back',
  share: 38,
  make(random) {
    const events = [...random.pick(JOURNALS)];
    for (let n = random.below(8); n > 0; n--) {
      const at = random.below(events.length);
      const [one] = events.splice(at, 1);
      const way = random.below(3);
      if (one !== undefined && way > 0) events.splice(random.below(events.length + 1), 0, one);
      if (one !== undefined && way > 1) events.splice(at, 0, one);
    }
    return { kind: 'journal', content: JSON.stringify(events) };
  },
  look({ content }) {
    const session = replay(JSON.parse(String(content)));
    if (session === undefined) return undefined;
    const { place, score } = session;
    if (!Number.isFinite(place)) return `a place of ${place}`;
    return place <= score.timeline.total ? undefined : 'past the end';
  },
});
