import { CODE_BYTES } from '../../src/app/exchange-sending.ts';
import { deflate } from '../../src/domain/exchange/deflate.ts';
import { incomingFromCode } from '../../src/domain/exchange/incoming.ts';
import { fewestLinks, joinLink } from '../../src/domain/exchange/link.ts';
import { encodePacket } from '../../src/domain/exchange/packet.ts';
import { toUtf8 } from '../../src/domain/exchange/utf8.ts';
import { drawCode } from '../../src/platform/codes/draw.ts';
import { newLeader, signWith, textBy } from '../drivers/exchange/leader.ts';
import { marshProgramme } from '../drivers/exchange/programmes.ts';
import { median, type Table } from './table.ts';

const BASE = 'https://club.example/towpath/';
const TURNS = 30;

const timed = (job: () => unknown): string =>
  median(
    Array.from({ length: TURNS }, () => {
      const begun = performance.now();
      job();
      return performance.now() - begun;
    }),
  ).toFixed(1);

/** What a signed programme of four groups takes as a link and in symbols. */
export function sending(): Table {
  const leader = newLeader();
  const row = (weeks: number): readonly string[] => {
    const text = textBy(leader, marshProgramme(weeks));
    const bytes = toUtf8(text);
    const signature = new Uint8Array(Buffer.from(signWith(leader, bytes), 'base64url'));
    const code = encodePacket({ bytes, signature });
    const links = fewestLinks(BASE, code, CODE_BYTES) ?? [];
    const versions = links.map((link) => drawCode(link)?.version ?? 0);
    return [
      String(weeks),
      String(bytes.length),
      String(deflate(bytes).length),
      String(joinLink(BASE, code).length),
      `${links.length} (version ${Math.max(...versions)})`,
      timed(() => encodePacket({ bytes, signature })),
      timed(() => incomingFromCode(code)),
      timed(() => links.map((link) => drawCode(link))),
    ];
  };
  return {
    title: 'Sending a programme',
    how: 'Four groups, signed, all plans read again when opened. Aim: 8 weeks in a link of 1,600 characters. Times are the middle one of 30, in ms, in Node.',
    head: ['Weeks', 'Bytes', 'Deflated', 'Link', 'QR symbols', 'Pack', 'Open', 'Draw'],
    rows: [4, 6, 8, 12].map(row),
  };
}
