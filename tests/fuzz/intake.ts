import { strToU8, zipSync } from 'fflate';
import { asAttendance, asHeard, asSetup } from '../../src/domain/board/shapes.ts';
import { heardOf } from '../../src/domain/board/take.ts';
import { joinLink, partLinks } from '../../src/domain/exchange/link.ts';
import { encodeAnswer } from '../../src/domain/exchange/packet.ts';
import { openAnswers } from '../../src/platform/intake/open-answers.ts';
import { answerLink, BASE, chatLine } from '../drivers/exchange/sealed.ts';
import type { AnswerSeeds } from './answers.ts';
import { hostileJson } from './hostile.ts';
import type { Random } from './random.ts';

/** Files of a leader's co-leader are opened with a passphrase, and may still be hostile. */
export const RECORDS = [
  {
    format: 'towpath-attendance/1',
    key: 'heron-loop-spring 2027-03-06',
    programmeId: 'heron-loop-spring',
    date: '2027-03-06',
    which: { week: 1, session: 2, at: Date.UTC(2027, 2, 6) },
    marks: { ['7f'.repeat(16)]: { present: true, at: Date.UTC(2027, 2, 6) } },
  },
  {
    format: 'towpath-board/1',
    programmeId: 'heron-loop-spring',
    expected: { wren: { count: 12, at: Date.UTC(2027, 2, 6) } },
    keep: { on: true, at: Date.UTC(2027, 2, 6) },
    forgotten: [{ digest: 'A'.repeat(43), at: Date.UTC(2027, 2, 6) }],
  },
] as const;

export const INTAKE_KINDS = ['chat, scratched', 'archive, scratched', 'record, hostile'] as const;
type Kind = (typeof INTAKE_KINDS)[number];

export type IntakeCase =
  | { readonly kind: Kind; readonly text: string }
  | { readonly kind: Kind; readonly file: Uint8Array<ArrayBuffer> };

const SPECIAL = [
  '\n> ',
  '=\r\n',
  '%2F',
  '\u00ad',
  '\u200b',
  '\u2014',
  '/answer/',
  '/join/',
  '.',
  '{',
  '\0',
];

function scratchedText(text: string, random: Random): string {
  let out = text;
  for (let n = random.below(6); n > 0; n--) {
    const at = random.below(out.length + 1);
    const more = random.below(80);
    const way = random.below(4);
    if (way === 0) out = out.slice(0, at) + out.slice(at + more);
    else if (way === 1) out = out.slice(0, at) + out.slice(at, at + more).repeat(3) + out.slice(at);
    else out = out.slice(0, at) + random.pick(SPECIAL) + out.slice(at);
  }
  return out;
}

function scratchedBytes(bytes: Uint8Array, random: Random): Uint8Array<ArrayBuffer> {
  const out = new Uint8Array(bytes);
  for (let n = random.below(5); n > 0; n--) {
    // The directory is at the end: half of the damage is there.
    const tail = Math.min(out.length, 160);
    const at = random.chance(0.5) ? out.length - 1 - random.below(tail) : random.below(out.length);
    out[at] = random.chance(0.3) ? random.below(256) : (out[at] ?? 0) ^ (1 << random.below(8));
  }
  return random.chance(0.2) ? out.slice(0, random.below(out.length)) : out;
}

/** A chat of some answers, whole and in parts, with programmes' links and talk among them. */
function chat({ sealed }: AnswerSeeds, random: Random): string {
  return Array.from({ length: 1 + random.below(6) }, (_, n) => {
    const code = encodeAnswer(random.pick(sealed));
    const way = random.below(4);
    if (way === 0) return partLinks(BASE, code, 2 + random.below(3), '#/answer/').join(' ');
    if (way === 1) return (answerLink(code).match(/.{1,70}/g) ?? []).join('\r\n> ');
    if (way === 2) return joinLink(BASE, random.bytes(60).join('A'));
    return chatLine(n, answerLink(code));
  }).join('\n');
}

/** A hostile chat, archive or record: the same number and seeds give the same way of damage. */
export function hostileIntake(seeds: AnswerSeeds, random: Random): IntakeCase {
  const kind = random.pick(INTAKE_KINDS);
  if (kind === 'chat, scratched') return { kind, text: scratchedText(chat(seeds, random), random) };
  if (kind === 'archive, scratched') {
    const file = zipSync({
      'chat.txt': [strToU8(chat(seeds, random)), { level: random.pick([0, 6, 9] as const) }],
      'more/b.json': strToU8(JSON.stringify(chat(seeds, random))),
      'more/c.jpg': random.bytes(40),
    });
    return { kind, file: scratchedBytes(file, random) };
  }
  const record = random.pick([...RECORDS, ...seeds.responses.map(heardOf)]);
  return { kind, text: hostileJson(record, random) };
}

const BOUNDED = 400_000;

function recordComplaint(text: string): string | undefined {
  let value: unknown;
  try {
    value = JSON.parse(text);
  } catch {
    return undefined;
  }
  for (const read of [asHeard, asAttendance, asSetup]) {
    const record = read(value);
    if (record === undefined) continue;
    if (JSON.stringify(record).length > BOUNDED) return 'a record out of bounds';
    // What was read is read again as the same: nothing in it changes on the way.
    if (JSON.stringify(read(structuredClone(record))) !== JSON.stringify(record))
      return 'a record that is another when it is read again';
  }
  return undefined;
}

/** What is wrong with what bringing in made of a case; nothing when all is as it must be. */
export async function intakeComplaint(
  seeds: AnswerSeeds,
  item: IntakeCase,
): Promise<string | undefined> {
  if (item.kind === 'record, hostile')
    return 'text' in item ? recordComplaint(item.text) : undefined;
  const known = new Set(seeds.responses.map((response) => JSON.stringify(response)));
  const content = 'text' in item ? item.text : new Blob([item.file]);
  let found = 0;
  let told = 0;
  for await (const batch of openAnswers([{ name: 'x', content }], seeds.pair)) {
    found += batch.found;
    told += batch.responses.length;
    for (const { why, count } of batch.left) if (!FILES.includes(why)) told += count;
    if (batch.share < 0 || batch.share > 1) return `a share of ${batch.share}`;
    if (batch.responses.length > 100) return 'more than a hundred at a time';
    for (const response of batch.responses)
      if (!known.has(JSON.stringify(response))) return 'opened as something else';
  }
  if (Object.keys(Object.prototype).length > 0 || 'polluted' in {}) return 'prototype changed';
  // A damaged or too large file is left too, and is no answer that was seen.
  return told >= found && ('file' in item || told === found) ? undefined : 'an answer was dropped';
}

const FILES: readonly string[] = ['file'];
