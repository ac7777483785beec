import { createStore, type StoreApi } from 'zustand/vanilla';
import { responseOf } from '../domain/exchange/tell.ts';
import type { Person } from '../domain/log/person.ts';
import { fail, ok, type Result } from '../domain/result.ts';
import type { App } from './contract.ts';
import type { ExchangePorts } from './exchange-ports.ts';
import type { Clock, FileShare, Store } from './ports.ts';
import { answerOf } from './tell-answer.ts';
import type {
  Answer,
  AnswerProblem,
  Introduction,
  TellingPerson,
  TellState,
} from './tell-contract.ts';

/** What telling needs of the app and of the world. */
export interface TellingNeeds {
  readonly clock: Pick<Clock, 'now'>;
  readonly store: Pick<Store, 'people' | 'putPerson'>;
  readonly share: FileShare;
  readonly exchange: () => Promise<ExchangePorts>;
  readonly newId: () => string;
  readonly programmes: App['programmes'];
  readonly log: App['log'];
}

const seen = ({ name = '', under16 = false, told }: Person): TellingPerson => ({
  name,
  under16,
  told,
});

/** Telling the leader of a programme what was done. Nothing is ever sent by itself. */
export async function openTelling(needs: TellingNeeds): Promise<StoreApi<TellState>> {
  const { clock, store, share, newId, programmes, log } = needs;
  const ports = await needs.exchange();

  async function personOf(programmeId: string): Promise<Result<Person | undefined, AnswerProblem>> {
    const people = await store.people();
    if (!people.ok) return fail({ code: 'not-kept' });
    return ok(people.value.find((each) => each.programmeId === programmeId));
  }

  async function keep(person: Person): Promise<Result<void, AnswerProblem>> {
    const written = await store.putPerson(person);
    if (!written.ok) return fail({ code: 'not-kept' });
    const { people } = state.getState();
    state.setState({ people: { ...people, [person.programmeId]: seen(person) } });
    return ok(undefined);
  }

  /** Read anew each time: another tab may have made the secret, and there must be only one. */
  async function introduced(
    programmeId: string,
    { name, under16 }: Introduction,
  ): Promise<Result<Person, AnswerProblem>> {
    const found = await personOf(programmeId);
    if (!found.ok) return found;
    const { secret = newId(), told = [] } = found.value ?? {};
    const person: Person = {
      format: 'towpath-person/1',
      programmeId,
      secret,
      told,
      ...(name === '' ? {} : { name }),
      ...(under16 ? { under16 } : {}),
    };
    const kept = await keep(person);
    return kept.ok ? ok(person) : kept;
  }

  /** Changes what was told, of a person who is there. */
  async function changeTold(
    { programmeId }: Answer,
    change: (told: Person['told']) => Person['told'],
  ): Promise<Result<void, AnswerProblem>> {
    const found = await personOf(programmeId);
    if (!found.ok) return found;
    if (found.value === undefined) return fail({ code: 'not-kept' });
    return keep({ ...found.value, told: change(found.value.told) });
  }

  const state: StoreApi<TellState> = createStore<TellState>(() => ({
    people: {},
    canShareWords: ports.words.canShare(),
    async load() {
      const people = await store.people();
      if (!people.ok) return fail({ code: 'not-kept' });
      const all = people.value.map((person) => [person.programmeId, seen(person)] as const);
      state.setState({ people: Object.fromEntries(all) });
      return ok(undefined);
    },
    async prepare(programmeId, telling, introduction) {
      const programme = programmes.getState().programmes.find(({ id }) => id === programmeId);
      if (programme === undefined) return fail({ code: 'other-programme' });
      if (telling.ids.length === 0) return fail({ code: 'empty' });
      const person = await introduced(programmeId, introduction);
      if (!person.ok) return person;
      const { entries } = log.getState();
      const last = entries.find((entry) => entry.programme.id === programmeId);
      const group = programmes.getState().chosen[programmeId] ?? last?.group.id ?? '';
      const whole = { programme, group, person: person.value, log: entries, now: clock.now() };
      return answerOf(programme, responseOf(whole, telling), ports);
    },
    noteTold: (answer) =>
      changeTold(answer, (told) => [
        ...told.filter(({ at }) => at !== answer.response.sentAt),
        { at: answer.response.sentAt, ids: answer.ids },
      ]),
    takeBack: (answer) =>
      changeTold(answer, (told) => told.filter(({ at }) => at !== answer.response.sentAt)),
    give: (answer) => share.give(answer.fileName, 'text/plain', answer.text),
    shareWords: (text) => ports.words.share(text),
  }));
  return state;
}
