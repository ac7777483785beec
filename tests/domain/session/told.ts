/** A session's story as a person reads it: at which second what happened, and what came of it. */
import { activeMs, doneMs } from '../../../src/domain/session/credit.ts';
import type { Effect } from '../../../src/domain/session/effect.ts';
import type { Button, Sign, Wish } from '../../../src/domain/session/event.ts';
import type { Medium, Session } from '../../../src/domain/session/session.ts';
import { Phone } from '../../drivers/player.ts';
import { BARE_DAY, EASY_DAY, NINE_O_CLOCK, scoreOf, waitScoreOf } from '../../drivers/sessions.ts';

const seconds = (ms: number): string => (ms / 1000).toFixed(1);
const since = (wall: number): string => seconds(wall - NINE_O_CLOCK);

function effectTold(effect: Effect): string {
  switch (effect.type) {
    case 'seek':
      return `seek ${seconds(effect.to)}`;
    case 'rebuild':
      return `rebuild ${seconds(effect.at)}`;
    case 'journal':
      return `${effect.strict ? 'write' : 'note'} ${effect.event.type}`;
    case 'stay-awake':
      return effect.on ? 'awake' : 'asleep';
    case 'boundary':
      return `boundary ${effect.change}`;
    default:
      return effect.type;
  }
}

/** What is said of a state besides its place: only what is out of the ordinary. */
function marksOf(session: Session): readonly string[] {
  const { wrong, broken, hushed, undo, gap, extraUntil, wentOnByLock, settledAt, endedAt } =
    session;
  return [
    ...(wrong ? ['wrong'] : []),
    ...(broken ? ['broken'] : []),
    ...(hushed ? ['hushed'] : []),
    ...(undo ? [`undo ${undo.what} to ${seconds(undo.place)} since ${since(undo.at)}`] : []),
    ...(gap
      ? [`gap ${since(gap.stoppedAt)} to ${since(gap.cameBackAt)}, ${seconds(gap.lost)} lost`]
      : []),
    ...(extraUntil === undefined ? [] : [`extra until ${seconds(extraUntil)}`]),
    ...(wentOnByLock === undefined ? [] : [`by the lock at ${since(wentOnByLock)}`]),
    ...(settledAt === undefined ? [] : [`settled at ${since(settledAt)}`]),
    ...(endedAt === undefined ? [] : [`over at ${since(endedAt)}`]),
  ];
}

const lineOf = (at: number, what: string, session: Session, effects: readonly Effect[]): string => {
  const { name, lane, place, track, moved, credit } = session;
  const where = `${name} ${lane} ${seconds(place)} at ${seconds(track)}`;
  const counted = `moved ${since(moved.wall)} to ${seconds(moved.track)}; done ${seconds(doneMs(credit))} active ${seconds(activeMs(credit))}`;
  const marks = marksOf(session).map((mark) => `; ${mark}`);
  const came = effects.length === 0 ? '' : ` => ${effects.map(effectTold).join(', ')}`;
  return `${seconds(at).padStart(7)}  ${what.padEnd(12)}  ${where}; ${counted}${marks.join('')}${came}`;
};

const settingIn = (fixture: string, name: string): string =>
  new RegExp(`^# ${name} +(.*)$`, 'm').exec(fixture)?.[1] ?? '';

/** What a line of a fixture asks to do, or nothing where it only tells of what came by itself. */
const askedIn = (line: string): { readonly at: number; readonly what: string } | undefined => {
  const [, at, what] = /^ *(\d+\.\d) {2}([a-z-]+)/.exec(line) ?? [];
  return at === undefined || what === undefined || what === 'itself'
    ? undefined
    : { at: Number(at), what };
};

/** What is done to the phone that is no event by itself. */
const TO_PHONE: Readonly<Record<string, (phone: Phone) => void>> = {
  take: (phone) => phone.take(),
  'give-back': (phone) => phone.giveBack(),
  stand: (phone) => phone.stick(true),
  move: (phone) => phone.stick(false),
  block: (phone) => {
    phone.blocked = true;
  },
  unblock: (phone) => {
    phone.blocked = false;
  },
};

/** The lines of a story, by what its fixture asks for. Signs that change nothing are left out. */
export function told(fixture: string): readonly string[] {
  const day = settingIn(fixture, 'session') === 'bare' ? BARE_DAY : EASY_DAY;
  const ahead = Number(settingIn(fixture, 'ahead'));
  const score = ahead > 0 ? waitScoreOf(day) : scoreOf(day);
  const phone = new Phone(score, settingIn(fixture, 'medium') as Medium);
  const purpose = settingIn(fixture, 'purpose') as Session['about']['purpose'];
  const lines: string[] = [];
  let heard = 0;
  const since = (): readonly Effect[] => phone.effects.slice(heard);
  const tell = (what: string): void => {
    lines.push(lineOf(phone.wall - NINE_O_CLOCK, what, phone.session, since()));
    heard = phone.effects.length;
  };
  const pass = (until: number): void => {
    while (phone.wall - NINE_O_CLOCK < until * 1000) {
      const before = phone.session.name;
      phone.pass(phone.blocked ? until - (phone.wall - NINE_O_CLOCK) / 1000 : 0.25);
      const news = since().some(({ type }) => type !== 'journal') || phone.session.name !== before;
      if (news) tell('itself');
      else heard = phone.effects.length;
    }
  };
  for (const line of fixture.split('\n')) {
    const asked = askedIn(line);
    if (asked === undefined) continue;
    pass(asked.at);
    const { what } = asked;
    if (what === 'start') {
      phone.session = { ...phone.session, about: { ...phone.session.about, purpose } };
      const about = { ...phone.session.about, startedAt: phone.wall + ahead * 1000 };
      const { medium, wall } = phone;
      phone.send({ type: 'start', wall, about, score, medium });
    } else if (what === 'recovered') {
      const { medium, wall } = phone;
      phone.send({ type: 'recovered', wall, layout: score.layout, medium });
    } else if (what in TO_PHONE) TO_PHONE[what]?.(phone);
    else if (what !== 'pass') phone.say(what as Sign | Wish | Button);
    tell(what);
  }
  return lines;
}
