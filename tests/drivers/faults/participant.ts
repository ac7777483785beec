/** A participant's whole story on one phone, and what is there of it afterwards. */
import { withFeeling } from '../../../src/domain/log/by-hand.ts';
import type { Result } from '../../../src/domain/result.ts';
import { settle } from '../clock.ts';
import { ALL } from '../exchange/answers.ts';
import { CHOICE, SHORT } from '../own-session.ts';
import { openTab, type Tab } from '../phone.ts';

/** A minute and ten: every kind of write happens in it, and it can be lived through many times. */
const PLAN = '20 s easy walk; 1 x (20 s run, 10 s walk); 20 s easy walk';
export const SHORTER = SHORT.replace(/"wren":"[^"]*"/, `"wren":"${PLAN}"`);

/** Seconds of that session. */
export const SHORTER_S = 70;

export interface Lived {
  readonly tab: Tab;
  /** What the person was told of trouble: by an answer to what they asked, or by a standing line. */
  readonly told: readonly string[];
}

/** Asks again while the answer is that it could not be done, as a person does who was told so. */
export async function insist<T>(
  told: string[],
  what: string,
  ask: () => Promise<Result<T, unknown>>,
): Promise<T> {
  for (let attempt = 1; ; attempt += 1) {
    const answer = await ask();
    if (answer.ok) return answer.value;
    told.push(what);
    if (attempt === 12) throw new Error(`${what}: ${JSON.stringify(answer.error)}`);
  }
}

/** Follows a programme, runs a session with a hold in it, says how it was, and tells the leader. */
export async function liveThrough(tab?: Tab): Promise<Lived> {
  const own = tab ?? (await openTab());
  const { app, clock } = own;
  const told: string[] = [];
  app.log.subscribe(({ unsaved }) => unsaved && told.push('what was entered is not written yet'));
  app.session.subscribe(({ view }) => view.unsaved && told.push('the session is not written yet'));

  const { received, programmes, settings, following, session, log } = app;
  await received.getState().open(SHORTER);
  await insist(told, 'keeping the programme', () => received.getState().accept('keep'));
  await programmes.getState().chooseGroup(CHOICE.programmeId, CHOICE.groupId);
  await settings.getState().change({ vibration: false });
  await following.getState().change({
    format: 'towpath-following/1',
    programmeId: CHOICE.programmeId,
    startedOn: '2027-03-01',
    pauses: [{ from: '2027-03-09', to: '2027-03-12', why: 'illness' }],
    decisions: [{ on: '2027-03-07', week: 1, group: 'wren', why: 'repeat' }],
  });
  await clock.pass(1);
  const asks = () => session.getState();
  await asks().prepare(CHOICE, 'sound');
  asks().start();
  await clock.pass(25);
  asks().hold();
  await clock.pass(7);
  asks().goOn();
  await clock.pass(55);
  const [entry] = log.getState().entries;
  if (entry === undefined) throw new Error('no session was finished');
  const feeling = { effort: 6, note: 'Wind on the sea wall' };
  await log.getState().write(withFeeling(entry, feeling, undefined, clock.now()));
  await clock.pass(1);
  const telling = (await app.telling()).getState();
  const wanted = { ids: [entry.id], ...ALL };
  const who = { name: 'Rosa', under16: false };
  const answer = await insist(told, 'making the answer', () =>
    telling.prepare(CHOICE.programmeId, wanted, who),
  );
  await insist(told, 'noting that it was told', () => telling.noteTold(answer));
  await clock.pass(20);
  return { tab: own, told };
}

/** What of the story another visit finds, without what is different each time. */
export async function thereAfter({ database, clock }: Tab): Promise<unknown> {
  const { app, store, kill } = await openTab({ database, clock, lockIsFree: () => true });
  const { entries } = app.log.getState();
  const people = await store.people();
  const journals = await store.journals();
  await settle();
  const there = {
    programmes: app.programmes.getState().programmes.some(({ id }) => id === CHOICE.programmeId),
    chosen: app.programmes.getState().chosen,
    vibration: app.settings.getState().settings.vibration,
    following: app.following.getState().following[CHOICE.programmeId],
    entries: entries.map(({ outcome, doneSeconds, feeling }) => [outcome, doneSeconds, feeling]),
    people:
      people.ok && people.value.map(({ name, told }) => [name, told.map((t) => t.ids.length)]),
    journals: journals.ok && journals.value.length,
    unfinished: app.session.getState().unfinished,
  };
  kill();
  return there;
}
