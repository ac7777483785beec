import type { StoreApi } from 'zustand/vanilla';
import type { ExchangeProblem, KeyProblem } from '../domain/exchange/problem.ts';
import { fail, ok, type Result } from '../domain/result.ts';
import type { KeysView, PublishingState, Sending, Sent } from './exchange-contract.ts';
import type { ExchangePorts, NewKeys, OwnKeys } from './exchange-ports.ts';
import type { Clock, FileShare } from './ports.ts';

/** Fetched when someone sends: nobody who only takes part needs it. */
const writer = () => import('./exchange-writer.ts');
const sending = () => import('./exchange-sending.ts');

/** What sending needs of the app and of the world. */
export interface PublishingNeeds {
  readonly ports: ExchangePorts;
  readonly clock: Pick<Clock, 'now'>;
  readonly share: FileShare;
}

const BACKUP_NAME = 'towpath-keys-backup.txt';

/** What may be asked of sending; the rest of its store is what it shows. */
export type Publishing = Omit<PublishingState, 'keys' | 'sent'>;

/** The leader's keys on this phone, and what was sent with them. */
export function createPublishing(
  { setState: set, getState: get }: Pick<StoreApi<PublishingState>, 'setState' | 'getState'>,
  { ports, clock, share }: PublishingNeeds,
): Publishing {
  let own: OwnKeys | undefined;

  function show(keys: OwnKeys | undefined): void {
    own = keys;
    set({ keys: viewOf(keys, ports) });
  }

  const wish = async (passphrase: string): Promise<NewKeys> => {
    const { backupWords: words } = await writer();
    return { passphrase, words, at: clock.now() };
  };

  async function have(
    made: Result<OwnKeys, KeyProblem>,
    isNew: boolean,
  ): Promise<Result<void, KeyProblem>> {
    if (!made.ok) return made;
    show(made.value);
    return isNew ? saveBackup() : ok(undefined);
  }

  async function saveBackup(): Promise<Result<void, KeyProblem>> {
    if (own === undefined) return fail({ code: 'no-keys' });
    await share.give(BACKUP_NAME, 'text/plain', own.backup);
    const saved = await ports.keys.saved(clock.now());
    if (!saved.ok) return saved;
    show(saved.value);
    return ok(undefined);
  }

  async function asSending(
    sent: Pick<Sent, 'text' | 'signature'>,
  ): Promise<Result<Sending, ExchangeProblem>> {
    const { sendingOf } = await sending();
    return sendingOf(sent, ports);
  }

  async function unsigned(text: string): Promise<Result<Sending, ExchangeProblem>> {
    const { outgoingText, incomingOf } = await writer();
    const read = incomingOf(text);
    if (!read.ok) return read;
    const { revision, change } = read.value.programme;
    const out = outgoingText(text, { revision, ...(change && { change }) });
    return asSending({ text: out, signature: '' });
  }

  async function publish(
    text: string,
    change?: string,
  ): Promise<Result<Sending, KeyProblem | ExchangeProblem>> {
    if (own === undefined) return fail({ code: 'no-keys' });
    if (own.savedAt === undefined) return fail({ code: 'not-backed-up' });
    const { outgoingText, incomingOf, saysTheSame, toUtf8 } = await writer();
    const read = incomingOf(text);
    if (!read.ok) return read;
    const { id, revision: written } = read.value.programme;
    const before = get().sent[id];
    const isSame =
      before !== undefined && saysTheSame(before.text, text) && isBy(before.text, own.sign);
    if (isSame) return asSending(before);
    const revision = Math.max(written, (await lastRevision(id)) + 1);
    const out = outgoingText(text, { revision, keys: own, ...(change && { change }) });
    const signature = await ports.keys.sign(toUtf8(out));
    if (!signature.ok) return signature;
    const next: Sent = { id, revision, text: out, signature: signature.value, at: clock.now() };
    // Read back before it is kept: a revision that cannot be opened is never counted.
    const going = await asSending(next);
    if (!going.ok) return going;
    const put = await ports.store.putSent(next);
    if (!put.ok) return fail({ code: 'not-kept' });
    set({ sent: { ...get().sent, [id]: next } });
    return going;
  }

  /** The latest that went out, as far as this phone knows: sent from it, or received on it. */
  async function lastRevision(id: string): Promise<number> {
    const { readProgramme } = await writer();
    const stored = await ports.store.programmes();
    const received = stored.ok
      ? stored.value.filter(({ key }) => key !== undefined && key === own?.sign)
      : [];
    const sent = get().sent[id];
    return [...received, ...(sent ? [sent] : [])].reduce((last, { text }) => {
      const read = readProgramme(text);
      return read.ok && read.value.id === id ? Math.max(last, read.value.revision) : last;
    }, 0);
  }

  return {
    async load() {
      const keys = await ports.keys.read();
      if (keys.ok) show(keys.value);
      const sent = await ports.store.sent();
      if (sent.ok) set({ sent: Object.fromEntries(sent.value.map((each) => [each.id, each])) });
    },
    makeKeys: async (passphrase) => have(await ports.keys.make(await wish(passphrase)), true),
    replaceKeys: async (passphrase) => have(await ports.keys.replace(await wish(passphrase)), true),
    restore: async (backup, passphrase) =>
      have(await ports.keys.restore(backup, passphrase, clock.now()), false),
    saveBackup,
    publish,
    async again(programmeId) {
      const sent = get().sent[programmeId];
      return sent === undefined ? fail({ code: 'nothing-found' }) : asSending(sent);
    },
    unsigned,
    give: (going) => share.give(going.fileName, 'text/plain', going.text),
  };
}

/** Whether a text that was sent names this key: after a change of keys it goes out anew. */
const isBy = (text: string, key: string): boolean => text.includes(`"sign":"${key}"`);

function viewOf(keys: OwnKeys | undefined, { verifier }: ExchangePorts): KeysView {
  if (keys === undefined) return { name: 'none' };
  const { sign, madeAt, savedAt } = keys;
  return {
    name: 'there',
    madeAt,
    ...(savedAt === undefined ? {} : { savedAt }),
    async digits(programmeId) {
      const digits = await verifier.digits(sign, programmeId);
      return digits.ok ? digits.value : '';
    },
  };
}
