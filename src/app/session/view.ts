import { COOL_DOWN } from '../../domain/cues/lanes.ts';
import { coolDownGoal } from '../../domain/session/move.ts';
import { segmentHere } from '../../domain/session/places.ts';
import {
  isBeginning,
  isOver,
  isUnderWay,
  isWaiting,
  type Session,
} from '../../domain/session/session.ts';
import { mayHaveOneMore, mayUndo, skipGoal, walkNowGoal } from '../../domain/session/wishes.ts';
import type { Segment } from '../../domain/timeline/timeline.ts';
import { type Ms, ms } from '../../domain/units.ts';
import type { Choice, Led, SessionView } from '../session-contract.ts';
import { type Captions, heardAt } from './captions.ts';
import { NOTHING_OFFERED } from './idle-view.ts';

/** What the view needs besides the session's state. */
export interface ViewNeeds {
  readonly now: number;
  /** Where the track is, holding lane included. */
  readonly track: Ms;
  readonly captions: Captions;
  readonly choice: Choice | undefined;
  readonly lead: Led | undefined;
  readonly unsaved: boolean;
  readonly awake: boolean;
  readonly busyElsewhere: boolean;
}

/** Everything that a screen shows of a session at one moment. Pure. */
export function viewOf(session: Session, needs: ViewNeeds): SessionView {
  const { about, score } = session;
  const { cue, caption } = heardAt(needs.captions, needs.track);
  const at = segmentOf(session);
  const { gap } = session;
  return {
    state: session.name,
    medium: session.medium,
    purpose: about.purpose,
    ...(needs.choice && { choice: needs.choice }),
    ...(needs.lead && { lead: needs.lead }),
    programmeTitle: about.programme.title,
    groupName: about.group.name,
    planText: about.plan,
    target: about.target,
    timeline: score.timeline,
    lane: session.name === 'holding' ? 'holding' : session.lane,
    position: session.place,
    segment: at.segment,
    left: isOver(session) ? ms(0) : at.left,
    ...(at.next && { next: at.next }),
    caption: session.name === 'ready' ? '' : caption,
    ...(cue && session.name !== 'ready' && { cue }),
    offers: offersOf(session, needs.now),
    ...(isWaiting(session) && { wait: waitOf(session, needs) }),
    ...(gap && { gap }),
    ...(isLate(session, needs.now) && { late: true }),
    wrong: session.wrong,
    unsaved: needs.unsaved,
    busyElsewhere: needs.busyElsewhere,
    awake: needs.awake,
  };
}

/** A sound that takes this long to begin is noticed. */
const LATE_MS = 1500;

const isLate = (session: Session, now: number): boolean =>
  isBeginning(session) && now - session.moved.wall >= LATE_MS;

/** The offered cool-down is a segment of its own, behind those of the plan. */
const coolDownSegment = (session: Session): Segment => ({
  ...(COOL_DOWN.segments[0] as Segment),
  index: session.score.timeline.segments.length,
});

/** Left in the segment, or in the extra minute, after which the rest of the segment comes. */
function segmentOf(session: Session): { segment: Segment; left: Ms; next?: Segment } {
  const { timeline, layout } = session.score;
  if (session.lane === 'cool-down') {
    const end = layout.coolDown?.end ?? layout.session;
    return { segment: coolDownSegment(session), left: ms(Math.max(0, end - session.track)) };
  }
  const segment = segmentHere(timeline, session.place);
  const extra = session.lane === 'one-more' ? session.extraUntil : undefined;
  const left =
    extra === undefined ? segment.end - session.place : Math.max(0, extra - session.track);
  const next = timeline.segments[segment.index + 1];
  return { segment, left: ms(Math.max(0, left)), ...(next && { next }) };
}

/** While it is heard, the sound's place is the clock; in silence there is only the wall clock. */
function waitOf(session: Session, { now, track }: ViewNeeds): NonNullable<SessionView['wait']> {
  const { startedAt } = session.about;
  const isHeard = session.name === 'waiting' && !isBeginning(session);
  const left = isHeard ? -track : startedAt - now;
  return { startsAt: startedAt, left: ms(Math.max(0, left)) };
}

function offersOf(session: Session, now: number): SessionView['offers'] {
  if (!isUnderWay(session)) return NOTHING_OFFERED;
  if (isWaiting(session)) return { ...NOTHING_OFFERED, goOn: true };
  if (session.about.purpose === 'lead') {
    const hold = session.name === 'running';
    return { ...NOTHING_OFFERED, hold, goOn: !hold };
  }
  const coolDown = coolDownGoal(session);
  const coolDownOffer =
    coolDown === undefined ? null : coolDown.lane === 'cool-down' ? 'five-minutes' : 'jump';
  if (session.name !== 'running') {
    return { ...NOTHING_OFFERED, goOn: true, coolDown: coolDownOffer };
  }
  return {
    hold: true,
    goOn: false,
    oneMore: mayHaveOneMore(session),
    walkNow: walkNowGoal(session) !== undefined,
    skip: skipGoal(session) !== undefined,
    back: true,
    coolDown: coolDownOffer,
    undo: session.undo && mayUndo(session, now) ? session.undo.what : null,
  };
}

/** Whether two views differ in anything that is shown: places count by the second. */
export function looksSame(a: SessionView, b: SessionView): boolean {
  return (
    Math.ceil(a.left / 1000) === Math.ceil(b.left / 1000) &&
    Math.floor(a.position / 1000) === Math.floor(b.position / 1000) &&
    a.segment?.index === b.segment?.index &&
    a.cue === b.cue &&
    a.wait?.startsAt === b.wait?.startsAt &&
    Math.ceil((a.wait?.left ?? 0) / 1000) === Math.ceil((b.wait?.left ?? 0) / 1000) &&
    a.gap?.stoppedAt === b.gap?.stoppedAt &&
    a.gap?.cameBackAt === b.gap?.cameBackAt &&
    PLAIN.every((key) => a[key] === b[key]) &&
    OFFERS.every((key) => a.offers[key] === b.offers[key])
  );
}

const PLAIN = [
  'state',
  'medium',
  'purpose',
  'choice',
  'lead',
  'programmeTitle',
  'groupName',
  'planText',
  'target',
  'timeline',
  'lane',
  'caption',
  'late',
  'wrong',
  'unsaved',
  'busyElsewhere',
  'awake',
] as const satisfies readonly (keyof SessionView)[];

const OFFERS = Object.keys(NOTHING_OFFERED) as (keyof SessionView['offers'])[];
