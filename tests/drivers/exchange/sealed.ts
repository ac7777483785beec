/** Answers as participants' phones send them: sealed for a leader's key, as links. */
import { ANSWER, joinLink } from '../../../src/domain/exchange/link.ts';
import { encodeAnswer } from '../../../src/domain/exchange/packet.ts';
import type { Response, ToldEntry } from '../../../src/domain/exchange/response.ts';
import { responseBytes } from '../../../src/domain/exchange/response-bytes.ts';
import { sealFor } from '../../../src/platform/keys/seal.ts';
import { otherSeal } from './other-hpke.ts';

export const BASE = 'https://club.example/app/';

/** The bytes that are sealed, as the app makes them. */
export function bytesOf(response: Response): Uint8Array<ArrayBuffer> {
  const bytes = responseBytes(response);
  if (!bytes.ok) throw new Error(bytes.error);
  return bytes.value;
}

/** The code of a response, sealed by the app. */
export async function sealedCode(seal: string, response: Response): Promise<string> {
  const sealed = await sealFor(seal, bytesOf(response));
  if (!sealed.ok) throw new Error(sealed.error);
  return encodeAnswer(sealed.value);
}

/** The same, sealed by another implementation of RFC 9180. */
export const otherCode = async (seal: string, response: Response): Promise<string> =>
  encodeAnswer(await otherSeal(seal, bytesOf(response)));

export const answerLink = (code: string): string => joinLink(BASE, code, ANSWER);

const DAY_MS = 86_400_000;
const WORDS = ['Wind on the sea wall', 'Legs felt good', 'Hard going in the soft sand', 'Herons!'];

/** What somebody tells on the Sunday of a week from 1 March 2027: two sessions, one with a note. */
export function weekly(person: number, week: number): Response {
  const sunday = Date.UTC(2027, 2, 7 + 7 * (week - 1), 18) + person * 1000;
  const session = (n: number): ToldEntry => {
    const startedAt = sunday - (4 - 2 * n) * DAY_MS;
    return {
      id: `p${person}-w${week}-s${n}`,
      week,
      session: n + 1,
      startedAt,
      offsetMinutes: 0,
      zone: 'Europe/London',
      localDate: new Date(startedAt).toISOString().slice(0, 10),
      doneSeconds: 1860,
      activeSeconds: 1860 - ((person * 7) % 60),
      target: 50 as ToldEntry['target'],
      effort: (person + week + n) % 11,
      ...(n === 1 ? { note: WORDS[(person + week) % WORDS.length] ?? '' } : {}),
    };
  };
  return {
    format: 'towpath-response/1',
    programme: { id: 'heron-loop-spring', revision: 1 },
    secret: person.toString(16).padStart(32, '0'),
    name: `Walker ${person}`,
    group: person % 2 === 0 ? 'wren' : 'dunlin',
    sentAt: sunday,
    leftOut: 0,
    entries: [session(0), session(1)],
  };
}

/** A line of a chat as it is exported. */
export const chatLine = (n: number, text: string): string =>
  `${String(1 + (n % 28)).padStart(2, '0')}/03/2027, 18:${String(n % 60).padStart(2, '0')} - Walker ${n}: ${text}\n`;
