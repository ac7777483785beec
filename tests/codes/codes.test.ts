import { describe, expect, it } from 'vitest';
import type { Code } from '../../src/app/exchange-contract.ts';
import { CODE_BYTES } from '../../src/app/exchange-sending.ts';
import { fewestLinks, joinLink } from '../../src/domain/exchange/link.ts';
import { decodeFrame, decodePicture } from '../../src/platform/codes/decode.ts';
import { drawCode } from '../../src/platform/codes/draw.ts';
import { codeOf, newLeader } from '../drivers/exchange/leader.ts';
import { blurred, colours, printed, sheet, zbarReads } from '../drivers/exchange/picture.ts';
import { marshProgramme } from '../drivers/exchange/programmes.ts';

const BASE = 'https://club.example/towpath/';
const leader = newLeader();
const linksOf = (weeks: number): readonly string[] => {
  const links = fewestLinks(BASE, codeOf(leader, marshProgramme(weeks)), CODE_BYTES);
  if (links === undefined) throw new Error('four symbols do not hold it');
  return links;
};

function drawn(text: string): Code {
  const code = drawCode(text);
  if (code === undefined) throw new Error(`not drawn: ${text.length} bytes`);
  return code;
}

/**
 * Bytes that a symbol holds with correction M: ISO/IEC 18004, table 7, as two independent copies
 * of it have it (see the project's list of references, section 11).
 */
const CAPACITY_M: readonly (readonly [version: number, bytes: number])[] = [
  [1, 14],
  [3, 42],
  [5, 84],
  [10, 213],
  [20, 666],
  [25, 997],
];

describe('QR symbols', () => {
  it.each(CAPACITY_M)('XCHG-9 version %i holds %i bytes and no more', (version, bytes) => {
    // Small letters are in byte mode only.
    expect(drawn('x'.repeat(bytes)).version).toBe(version);
    const more = drawCode('x'.repeat(bytes + 1));
    if (version === 25) expect(more).toBeUndefined();
    else expect(more?.version).toBe(version + 1);
  });

  it('XCHG-9 a symbol has 17 + 4 v modules and four more on every side', () => {
    for (const [version, bytes] of CAPACITY_M) {
      const code = drawn('x'.repeat(bytes));
      expect(code.size).toBe(17 + 4 * version + 8);
      const { data, width } = printed(code, 1);
      const isQuiet = (x: number, y: number): boolean =>
        Math.min(x, y, width - 1 - x, width - 1 - y) < 4;
      const quiet = [...data].filter((_, at) => isQuiet(at % width, Math.floor(at / width)));
      expect(new Set(quiet)).toEqual(new Set([255]));
      // The corners of the three finding patterns are dark.
      for (const at of [4 * width + 4, 4 * width + width - 5, (width - 5) * width + 4])
        expect(data[at]).toBe(0);
    }
  });

  it('XCHG-9 the longest link that is taken for one symbol is one', () => {
    const code = 'x'.repeat(CODE_BYTES - joinLink(BASE, '').length);
    expect(fewestLinks(BASE, code, CODE_BYTES)).toHaveLength(1);
    expect(drawn(joinLink(BASE, code)).version).toBe(25);
    expect(fewestLinks(BASE, `${code}x`, CODE_BYTES)).toHaveLength(2);
  });
});

describe.each([4, 6, 8, 12])('the symbols of a signed programme of %i weeks', (weeks) => {
  const links = linksOf(weeks);

  it('XCHG-9 are read by a decoder of other people’s making', () => {
    expect(links.map((link) => zbarReads(printed(drawn(link), 4)))).toEqual(
      links.map((link) => [link]),
    );
  });

  it('XCHG-9 so they are after a slight blur', () => {
    // Sigma of 0.4 of a module: edges are gone, the centre of each module still tells.
    const seen = links.map((link) => zbarReads(blurred(printed(drawn(link), 5), 2)));
    expect(seen).toEqual(links.map((link) => [link]));
  });

  it('XCHG-9 are read by the app, sharp and after a slight blur', () => {
    for (const link of links) {
      expect(decodeFrame(colours(printed(drawn(link), 4)))).toBe(link);
      expect(decodeFrame(colours(blurred(printed(drawn(link), 5), 2)))).toBe(link);
    }
  });
});

describe('several symbols on one sheet', () => {
  it('XCHG-9 are all read by the app from one picture', async () => {
    const links = linksOf(12);
    const picture = sheet(
      links.map((link) => printed(drawn(link), 4)),
      20,
    );
    expect([...(await decodePicture(colours(picture)))].sort()).toEqual([...links].sort());
  });

  it('XCHG-9 a picture without a symbol says nothing', async () => {
    const data = new Uint8Array(200 * 200).fill(255);
    const picture = colours({ data, width: 200, height: 200 });
    expect(await decodePicture(picture)).toEqual([]);
    expect(decodeFrame(picture)).toBeUndefined();
  });
});
