import type { Codes } from '../../app/exchange-ports.ts';
import type { Intake, IntakeBatch, IntakeSource, Left } from '../../app/intake-contract.ts';
import { isPictureFile } from '../../domain/exchange/file-kind.ts';
import { fail, ok, type Result } from '../../domain/result.ts';
import { subtle } from '../keys/curve.ts';
import type { SealPair } from '../keys/seal.ts';
import type { Connection } from '../store/connection.ts';
import type { LeaderRecord } from '../store/schema.ts';
import { openInWorker } from './in-worker.ts';
import { openAnswers } from './open-answers.ts';
import { bytesOf } from './piece.ts';

type Taking = (batch: IntakeBatch) => Promise<void>;

async function pairOf(
  connection: Connection,
): Promise<Result<SealPair, 'no-keys' | 'not-secure' | 'not-loaded'>> {
  if (subtle() === undefined) return fail('not-secure');
  const read = await connection.read(['keys'], (tx) => tx.objectStore('keys').get('leader'));
  if (!read.ok) return fail('not-loaded');
  const record = read.value as LeaderRecord | undefined;
  return record === undefined
    ? fail('no-keys')
    : ok({ seal: record.seal, openWith: record.openWith });
}

async function isPicture(content: Blob): Promise<boolean> {
  const first = await bytesOf(content, 0, 4);
  return first.ok && isPictureFile(first.value);
}

/** Pictures as the texts of the codes in them: only a page can draw, so it is done before. */
async function withoutPictures(
  sources: readonly IntakeSource[],
  codes: Pick<Codes, 'inPicture'>,
  signal: AbortSignal,
): Promise<{ readonly texts: readonly IntakeSource[]; readonly left: readonly Left[] }> {
  const texts: IntakeSource[] = [];
  const left: Left[] = [];
  for (const source of sources) {
    const { name, content } = source;
    if (signal.aborted) break;
    if (typeof content === 'string' || !(await isPicture(content))) texts.push(source);
    else {
      const read = await codes.inPicture(content);
      if (read.ok) texts.push({ name, content: read.value.join('\n') });
      else left.push({ why: 'file', count: 1, from: [name] });
    }
  }
  return { texts, left };
}

/** Lets the page draw and hear taps. */
const breath = (): Promise<void> => new Promise((resolve) => setTimeout(resolve));

/** The same on the page, where no worker can be had: a batch, then a breath. */
async function openOnPage(
  sources: readonly IntakeSource[],
  pair: SealPair,
  take: Taking,
  signal: AbortSignal,
): Promise<void> {
  for await (const batch of openAnswers(sources, pair)) {
    if (signal.aborted) return;
    await take(batch);
    if (signal.aborted) return;
    await breath();
  }
}

/** What `createIntake` opens with: in a worker where there is one, else on the page. */
export async function openSources(
  {
    connection,
    codes,
  }: { readonly connection: Connection; readonly codes: Pick<Codes, 'inPicture'> },
  ...[sources, take, signal]: Parameters<Intake['open']>
): ReturnType<Intake['open']> {
  const pair = await pairOf(connection);
  if (!pair.ok) return pair;
  const { texts, left } = await withoutPictures(sources, codes, signal);
  if (signal.aborted) return ok(undefined);
  if (left.length > 0) await take({ share: 0, responses: [], from: [], left, found: 0 });
  const opened = await openInWorker(texts, pair.value, take, signal);
  if (opened.ok) return opened;
  if (opened.error === 'lost') return fail('not-loaded');
  await openOnPage(texts, pair.value, take, signal);
  return ok(undefined);
}
