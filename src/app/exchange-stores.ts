import { createStore, type StoreApi } from 'zustand/vanilla';
import { fail, type Result } from '../domain/result.ts';
import type { Came, PublishingState, ReceivedState } from './exchange-contract.ts';
import type { ExchangePorts } from './exchange-ports.ts';
import type { Publishing, PublishingNeeds } from './exchange-publish.ts';
import type { Receiving, ReceivingNeeds } from './exchange-receive.ts';
import { once } from './once.ts';
import type { StoredProgramme, StoreProblem } from './ports.ts';

/** A step between, so that the first page does not hold the list of all that lies behind it. */
const parts = () => import('./exchange-parts.ts');

/** Everything behind it is fetched when something is first asked: the first page stands without. */
type Later<T> = Omit<T, 'ports'> & { readonly ports: () => Promise<ExchangePorts> };

/** A result, also when what gives it cannot be fetched. */
async function told<T, E>(
  job: () => Promise<Result<T, E>>,
): Promise<Result<T, E | { readonly code: 'not-loaded' }>> {
  try {
    return await job();
  } catch {
    return fail({ code: 'not-loaded' });
  }
}

/** Receiving, before anything of it has been fetched. */
export function createReceived(needs: Later<ReceivingNeeds>): StoreApi<ReceivedState> {
  let here: Receiving | undefined;
  const receiving = once(async () => {
    const [{ createReceiving }, ports] = await Promise.all([
      parts().then((all) => all.receiving()),
      needs.ports(),
    ]);
    here = createReceiving(store, { ...needs, ports });
    return here;
  });
  const ask = async (job: (receive: Receiving) => Promise<void>): Promise<void> => {
    try {
      await job(await receiving());
    } catch {
      store.setState({ received: { name: 'refused', problem: { code: 'not-loaded' } } });
    }
  };
  const lost: StoreProblem = { code: 'lost', detail: 'a part of the app could not be fetched' };
  const store: StoreApi<ReceivedState> = createStore<ReceivedState>(() => ({
    received: { name: 'nothing' },
    came: {},
    open: (text) => ask((receive) => receive.open(text)),
    openFile: (file) => ask((receive) => receive.openFile(file)),
    scan: (video) => told(async () => (await receiving()).scan(video)),
    async accept(choice) {
      try {
        return await (await receiving()).accept(choice);
      } catch {
        return fail(lost);
      }
    },
    dismiss() {
      // At once where it can be: the camera's light must go out with the tap.
      if (here !== undefined) return here.dismiss();
      store.setState({ received: { name: 'nothing' } });
      receiving().then(
        (receive) => receive.dismiss(),
        () => {},
      );
    },
  }));
  return store;
}

/** Sending, before anything of it has been fetched. */
export function createPublished(needs: Later<PublishingNeeds>): StoreApi<PublishingState> {
  const publishing = once(async () => {
    const [{ createPublishing }, ports] = await Promise.all([
      parts().then((all) => all.publishing()),
      needs.ports(),
    ]);
    return createPublishing(store, { ...needs, ports });
  });
  const ask = <T, E>(job: (publish: Publishing) => Promise<Result<T, E>>) =>
    told(async () => job(await publishing()));
  const store: StoreApi<PublishingState> = createStore<PublishingState>(() => ({
    keys: { name: 'unknown' },
    sent: {},
    load: async () => (await publishing()).load(),
    makeKeys: (passphrase) => ask((publish) => publish.makeKeys(passphrase)),
    saveBackup: () => ask((publish) => publish.saveBackup()),
    restore: (backup, passphrase) => ask((publish) => publish.restore(backup, passphrase)),
    replaceKeys: (passphrase) => ask((publish) => publish.replaceKeys(passphrase)),
    publish: (text, change) => ask((publish) => publish.publish(text, change)),
    again: (programmeId) => ask((publish) => publish.again(programmeId)),
    unsigned: (text) => ask((publish) => publish.unsigned(text)),
    give: async (sending) => (await publishing()).give(sending),
  }));
  return store;
}

/** What is known of the programmes that were stored, shown once they have been read. */
export async function showCame(
  received: StoreApi<ReceivedState>,
  stored: readonly StoredProgramme[],
): Promise<void> {
  if (stored.length === 0) return;
  const { cameOf } = await (await parts()).judging();
  const all = stored.flatMap((each): Came | readonly [] => cameOf(each) ?? []);
  const came = Object.fromEntries(all.map((each) => [each.id, each]));
  received.setState({ came: { ...came, ...received.getState().came } });
}
