import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { Ajv2020 } from 'ajv/dist/2020.js';
import addFormats from 'ajv-formats';
import { describe, expect, it } from 'vitest';
import { outgoingText, saysTheSame } from '../../../src/domain/exchange/compose.ts';
import { incomingFromCode, incomingOf } from '../../../src/domain/exchange/incoming.ts';
import { joinLink } from '../../../src/domain/exchange/link.ts';
import { encodePacket } from '../../../src/domain/exchange/packet.ts';
import { readSuccession, successionClaims } from '../../../src/domain/exchange/succession.ts';
import { toUtf8 } from '../../../src/domain/exchange/utf8.ts';
import { PROGRAMME_MAX_BYTES } from '../../../src/domain/programme/programme.ts';
import { codeBy, codeOf, newLeader, nodeVerifies, textBy } from '../../drivers/exchange/leader.ts';
import { marshProgramme } from '../../drivers/exchange/programmes.ts';
import { ROOT } from '../../drivers/tree.ts';

const leader = newLeader();
const open = (code: string) => {
  const read = incomingFromCode(code);
  if (!read.ok) throw new Error(read.error.code);
  return read.value;
};

describe('what goes out', () => {
  const file = {
    ...marshProgramme(4),
    tideTable: { 'https://club.example': [1, 2] },
    leader: { name: 'Imogen', sign: null, seal: null, walkieTalkie: 7 },
  };

  it('XCHG-15 keeps every key that this version does not know, whatever it is called', () => {
    const odd = JSON.stringify(file).replace(
      '"tideTable"',
      '"__proto__":{"admin":true},"tideTable"',
    );
    const text = outgoingText(odd, { revision: 3, keys: leader, change: 'Week 2 is easier.' });
    const out = JSON.parse(text);
    expect(out.tideTable).toEqual(file.tideTable);
    expect(Object.hasOwn(out, '__proto__')).toBe(true);
    expect(out.leader).toMatchObject({ name: 'Imogen', walkieTalkie: 7, sign: leader.sign });
    expect(out.leader).toHaveProperty('seal', leader.seal);
    expect(out.leader).not.toHaveProperty('was');
    expect(out).toMatchObject({ revision: 3, change: 'Week 2 is easier.' });
    expect(({} as { admin?: boolean }).admin).toBeUndefined();
  });

  it('XCHG-15 has its keys in one order, whatever order the file has, what is not known behind them', () => {
    const turned = Object.fromEntries(Object.entries(file).reverse());
    const [one, other] = [file, turned].map((each) =>
      Object.keys(JSON.parse(outgoingText(JSON.stringify(each), { revision: 3 }))),
    );
    expect(other).toEqual(one);
    expect(one?.slice(0, 4)).toEqual(['format', 'id', 'revision', 'title']);
    expect(one?.at(-1)).toBe('tideTable');
  });

  it('XCHG-15 without keys goes unsigned, whatever keys the file names', () => {
    const named = { ...file, leader: { ...file.leader, sign: 'x', seal: 'y', was: ['z'] } };
    expect(JSON.parse(outgoingText(JSON.stringify(named), { revision: 3 })).leader).toEqual({
      ...file.leader,
      sign: null,
      seal: null,
    });
  });

  it('XCHG-15 is the same programme to the reader, and to the published schema', () => {
    const text = outgoingText(JSON.stringify(file), { revision: 1, keys: newLeader(leader) });
    const schema = readFileSync(join(ROOT, 'public/towpath-programme.schema.json'), 'utf8');
    const ajv = new Ajv2020({ strictTypes: false });
    addFormats.default(ajv);
    const validate = ajv.compile(JSON.parse(schema));
    expect(validate(JSON.parse(text)), JSON.stringify(validate.errors)).toBe(true);
    const read = incomingOf(text);
    if (!read.ok) throw new Error(read.error.code);
    expect(read.value.programme.weeks).toHaveLength(4);
  });

  it('XCHG-15 says the same when only revision, keys and the line on changes differ', () => {
    const one = textBy(leader, file, { revision: 2, change: 'One' });
    expect(saysTheSame(one, JSON.stringify(file, null, 4))).toBe(true);
    expect(saysTheSame(one, JSON.stringify({ ...file, title: 'Another' }))).toBe(false);
  });
});

describe('what comes in', () => {
  const text = textBy(leader, marshProgramme(8));

  it('XCHG-5 what was signed is what Node’s cryptography is given to verify', () => {
    const { claim, programme } = open(codeBy(leader, text));
    if (claim === undefined) throw new Error('unsigned');
    expect(programme.text).toBe(text);
    expect(claim.key).toBe(leader.sign);
    expect(nodeVerifies(claim.key, claim.bytes, claim.signature)).toBe(true);
    expect(nodeVerifies(newLeader().sign, claim.bytes, claim.signature)).toBe(false);
  });

  it('XCHG-5 a signature beside a programme that names no key is refused', () => {
    const unsigned = textBy(undefined, marshProgramme(4));
    const bytes = toUtf8(unsigned);
    const code = encodePacket({ bytes, signature: new Uint8Array(64) });
    expect(incomingFromCode(code)).toEqual({ ok: false, error: { code: 'signature' } });
  });

  it('XCHG-12 a key without a signature counts for nothing', () => {
    const { claim, was } = open(codeBy(undefined, textBy(newLeader(leader), marshProgramme(4))));
    expect(claim).toBeUndefined();
    expect(was).toEqual([]);
  });

  it('XCHG-16 one reason for whatever is wrong with it', () => {
    const reason = (content: string): string => {
      const read = incomingFromCode(encodePacket({ bytes: toUtf8(content) }));
      return read.ok ? 'taken' : read.error.code;
    };
    expect(reason(text)).toBe('taken');
    expect(reason('')).toBe('programme');
    const long = incomingOf(text.replace('{', `{"x":"${'a'.repeat(PROGRAMME_MAX_BYTES)}",`));
    expect(long).toEqual({ ok: false, error: { code: 'too-large' } });
    expect(reason('[1]')).toBe('programme');
    expect(reason('{"format":"towpath-programme/2"}')).toBe('newer');
    expect(reason(text.replace('7 x (', '7 x ('.repeat(60)))).toBe('programme');
    const wrong = incomingFromCode(
      encodePacket({ bytes: toUtf8(text.replace('2 min run', '2 m run')) }),
    );
    if (wrong.ok) throw new Error('taken');
    expect(wrong.error.problems?.[0]).toMatchObject({
      code: 'plan',
      path: 'weeks[0].sessions.curlew',
    });
    const cut = incomingFromCode(encodePacket({ bytes: toUtf8(text) }).slice(0, 4));
    expect(cut).toEqual({ ok: false, error: { code: 'cut-short' } });
    const notText = encodePacket({ bytes: Uint8Array.of(0x7b, 0xff, 0x7d) });
    expect(incomingFromCode(notText)).toEqual({ ok: false, error: { code: 'damaged' } });
  });

  it('XCHG-16 what nests deeper than any programme does is refused before anything walks through it', () => {
    const deep = (depth: number, around = '[]') =>
      text.replace('{', `{"x":${around[0]?.repeat(depth)}${around[1]?.repeat(depth)},`);
    expect(incomingOf(deep(31)).ok).toBe(true);
    expect(incomingOf(deep(32))).toEqual({ ok: false, error: { code: 'programme' } });
    const brackets = '[['.repeat(50);
    expect(incomingOf(text.replace('{', `{"x":"\\"${brackets}\\\\","y":"${brackets}",`)).ok).toBe(
      true,
    );
  });

  it('XCHG-13 changes of keys are read from the newest back, as far as they are right', () => {
    const third = newLeader(newLeader(leader));
    const file = JSON.parse(textBy(third, marshProgramme(4)));
    expect(readSuccession(JSON.stringify(file)).map(({ sign }) => sign)).toEqual([
      leader.sign,
      third.was[1]?.sign,
    ]);
    file.leader.was[0].proof = 'x';
    expect(readSuccession(JSON.stringify(file)).map(({ sign }) => sign)).toEqual([
      third.was[1]?.sign,
    ]);
    file.leader.was[1] = null;
    expect(readSuccession(JSON.stringify(file))).toEqual([]);
    file.leader.was = Array.from({ length: 40 }, () => third.was[1]);
    expect(readSuccession(JSON.stringify(file))).toHaveLength(4);
  });
});

describe('a row of changes', () => {
  it('XCHG-13 each key signs the one after it, the last the key of now', () => {
    const third = newLeader(newLeader(leader));
    const [first, second] = third.was;
    if (first === undefined || second === undefined) throw new Error('no changes');
    const claims = successionClaims(third.was, third.sign);
    expect(claims.map(({ by, bytes }) => [by, Buffer.from(bytes).toString()])).toEqual([
      [first.sign, `towpath-key/1\n${first.sign}\n${second.sign}`],
      [second.sign, `towpath-key/1\n${second.sign}\n${third.sign}`],
    ]);
  });

  it('XCHG-13 is empty where a text tells of none', () => {
    for (const text of ['[]', '{}', '{"leader":7}', '{"leader":{}}', '{"leader":{"was":"x"}}'])
      expect([text, readSuccession(text)]).toEqual([text, []]);
  });

  it('XCHG-13 a proof is 86 letters and nothing else, a key 44', () => {
    const file = JSON.parse(textBy(newLeader(leader), marshProgramme(4)));
    const [step] = file.leader.was;
    const taken = (was: object) => {
      file.leader.was = [was];
      return readSuccession(JSON.stringify(file)).length;
    };
    expect(taken(step)).toBe(1);
    for (const proof of [
      `${step.proof}A`,
      `A${step.proof}`,
      step.proof.slice(1),
      `${step.proof}\n`,
    ])
      expect(taken({ ...step, proof })).toBe(0);
    // A list of one text is that text where a text is asked for.
    expect(taken({ ...step, proof: [step.proof] })).toBe(0);
    expect(taken({ ...step, sign: [step.sign] })).toBe(0);
    for (const sign of [`${step.sign}A`, `A${step.sign}`, step.sign.slice(1)])
      expect(taken({ ...step, sign })).toBe(0);
  });
});

describe('how long it is', () => {
  const base = 'https://club.example/towpath/';

  it('XCHG-8 a signed programme of 8 weeks and 4 groups is a link of at most 1,600 characters', () => {
    const link = joinLink(base, codeOf(leader, marshProgramme(8)));
    expect(link.length).toBeLessThanOrEqual(1600);
  });

  it('XCHG-8 so it is in words that the dictionary does not have', () => {
    const words = JSON.stringify(marshProgramme(8))
      .replaceAll('heron-loop-spring', 'zes-weken-dijk')
      .replaceAll('Heron Loop', 'Rondje Zilte Polder')
      .replace(/"focus":"[^"]*"/g, () => `"focus":"${strange(40)}"`)
      .replace(/"for":"[^"]*"/g, () => `"for":"${strange(40)}"`);
    const link = joinLink(base, codeOf(leader, JSON.parse(words)));
    expect(link.length).toBeLessThanOrEqual(1600);
  });
});

/** Letters as of a language that shares nothing with the dictionary, and the same every time. */
let seed = 7;
function strange(length: number): string {
  return Array.from({ length }, () => {
    seed = (seed * 48271) % 2147483647;
    return 'aeiou nrtsldvkgbmpzjhwf'[seed % 23];
  })
    .join('')
    .trim();
}
