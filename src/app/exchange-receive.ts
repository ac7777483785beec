import type { StoreApi } from 'zustand/vanilla';
import type { Acceptance } from '../domain/exchange/decide.ts';
import type { Incoming } from '../domain/exchange/incoming.ts';
import type { Part } from '../domain/exchange/link.ts';
import type { Parts } from '../domain/exchange/parts.ts';
import type { ExchangeProblem } from '../domain/exchange/problem.ts';
import { fail, ok, type Result } from '../domain/result.ts';
import type { ProgrammesState } from './contract.ts';
import type { Preview, ReceivedState } from './exchange-contract.ts';
import { textsOf } from './exchange-files.ts';
import type { Judged } from './exchange-judge.ts';
import type { ExchangePorts } from './exchange-ports.ts';
import type { Clock, StoreProblem } from './ports.ts';

/** Fetched when something is opened: the first page stands without it. */
const reader = () => import('./exchange-reader.ts');
const judging = () => import('./exchange-judge.ts');

/** What receiving needs of the app and of the world. */
export interface ReceivingNeeds {
  readonly ports: Pick<ExchangePorts, 'verifier' | 'store' | 'codes'>;
  readonly clock: Pick<Clock, 'now'>;
  readonly programmes: StoreApi<ProgrammesState>;
}

/** What may be asked of receiving; the rest of its store is what it shows. */
export type Receiving = Omit<ReceivedState, 'received' | 'came'>;

/** Programmes from outside: opened, looked at, and stored only when the person says so. */
export function createReceiving(
  { setState: set, getState: get }: Pick<StoreApi<ReceivedState>, 'setState' | 'getState'>,
  { ports, clock, programmes }: ReceivingNeeds,
): Receiving {
  let judged: Judged | undefined;
  let incoming: Incoming | undefined;
  let parts: Parts | undefined;
  let stopScan: (() => void) | undefined;
  /** What was opened last: an answer to something older is late and not shown. */
  let turn = 0;

  function begin(): number {
    turn++;
    judged = incoming = undefined;
    set({ received: { name: 'reading' } });
    return turn;
  }

  function stop(): void {
    stopScan?.();
    stopScan = undefined;
  }

  function refuse(problem: ExchangeProblem): void {
    judged = incoming = undefined;
    set({ received: { name: 'refused', problem } });
  }

  async function openFile(file: Blob): Promise<void> {
    const mine = begin();
    const texts = await textsOf(file, ports.codes);
    if (mine !== turn) return;
    if (!texts.ok) return refuse({ code: texts.error });
    for (const text of texts.value) {
      await open(text, texts.value.length > 1);
      if (get().received.name === 'preview') return;
    }
    if (get().received.name === 'reading') refuse({ code: 'nothing-found' });
  }

  /** @param isOneOfMany others may follow: what is not ours is passed over without a word */
  async function open(text: string, isOneOfMany: boolean): Promise<void> {
    const { findIn, incomingFromCode, incomingOf } = await reader();
    const found = findIn(text);
    const isOurs = found.kind === 'code' || found.kind === 'parts' || found.kind === 'file';
    if (isOneOfMany && !isOurs) return;
    if (found.kind === 'parts') return addParts(found.parts);
    const mine = begin();
    if (found.kind === 'file') return show(incomingOf(found.text), mine);
    if (found.kind === 'code') return show(incomingFromCode(found.code), mine);
    refuse({ code: found.kind === 'nothing' ? 'nothing-found' : found.kind });
  }

  async function addParts(more: readonly Part[]): Promise<void> {
    const { collect, incomingFromCode, partsThere } = await reader();
    for (const part of more) {
      const collected = collect(parts, part);
      parts = collected.kind === 'waiting' ? collected.parts : undefined;
      if (collected.kind === 'damaged') return refuse({ code: 'damaged' });
      if (collected.kind === 'complete') return show(incomingFromCode(collected.code), begin());
    }
    if (parts === undefined) return;
    turn++;
    set({ received: { name: 'parts', have: partsThere(parts), of: parts.of } });
  }

  const shownOf = async (result: Judged): Promise<Preview> =>
    (await judging()).previewOf(result, ports.verifier, programmes.getState());

  async function show(read: Result<Incoming, ExchangeProblem>, mine: number): Promise<void> {
    // What is seen from here on would only get in the way of the answer.
    stop();
    if (!read.ok) return refuse(read.error);
    const { judge } = await judging();
    const result = await judge(read.value, ports);
    if (mine !== turn) return;
    if (!result.ok) return refuse(result.error);
    const preview = await shownOf(result.value);
    if (mine !== turn) return;
    incoming = read.value;
    judged = result.value;
    set({ received: { name: 'preview', preview } });
  }

  async function accept(choice: Acceptance): Promise<Result<void, StoreProblem>> {
    if (judged === undefined || incoming === undefined) return ok(undefined);
    const shown = judged;
    const mine = turn;
    const { judge } = await judging();
    // Another tab may have stored something since this was shown.
    const fresh = await judge(incoming, ports);
    if (mine !== turn) return ok(undefined);
    if (!fresh.ok) return fail({ code: 'lost', detail: fresh.error.code });
    if (fresh.value.decision.verdict.kind !== shown.decision.verdict.kind) {
      judged = fresh.value;
      set({ received: { name: 'preview', preview: await shownOf(fresh.value) } });
      return ok(undefined);
    }
    if (!shown.decision.choices.includes(choice)) return ok(undefined);
    return keep(fresh.value, choice);
  }

  async function keep(taken: Judged, choice: Acceptance): Promise<Result<void, StoreProblem>> {
    const { cameOf, recordOf } = await judging();
    const record = recordOf(taken, choice, clock.now());
    const local = record.id;
    const written = await ports.store.putProgramme(record);
    if (!written.ok) return written;
    const others = programmes.getState().programmes.filter(({ id }) => id !== local);
    programmes.setState({ programmes: [...others, { ...taken.programme, id: local }] });
    const came = cameOf(record);
    judged = incoming = parts = undefined;
    set({
      came: came === undefined ? get().came : { ...get().came, [local]: came },
      received: { name: 'kept', id: local, verdict: taken.decision.verdict },
    });
    return ok(undefined);
  }

  return {
    open: (text) => open(text, false),
    openFile,
    async scan(video) {
      stop();
      let last = '';
      let isOver = false;
      const watching = await ports.codes.watch(video, (text) => {
        // The same symbol stays in view for a while; codes that are not ours are not an error.
        if (isOver || text === last) return;
        last = text;
        open(text, true).catch(() => refuse({ code: 'not-loaded' }));
      });
      if (!watching.ok) return fail({ code: watching.error });
      stopScan = () => {
        isOver = true;
        watching.value();
      };
      return ok(stop);
    },
    accept,
    dismiss() {
      turn++;
      stop();
      judged = incoming = parts = undefined;
      set({ received: { name: 'nothing' } });
    },
  };
}
