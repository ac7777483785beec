import type { LeadChoice } from '../../domain/lead/choose.ts';
import type { LeadMark } from '../../domain/lead/cut-off.ts';
import { VOICES } from '../../domain/lead/lead-plan.ts';
import { isWaiting, type Session } from '../../domain/session/session.ts';
import { ms } from '../../domain/units.ts';
import type { LeadNote } from '../ports.ts';
import type { Led, LedBefore } from '../session-contract.ts';

/** Remembers how groups were led last and, while they are, where they are. */
export interface LeadKeeper {
  /** What an earlier run of the app left. */
  look(): void;
  /** Something happened to the session: where it is now is written down. */
  mark(session: Session): void;
  /** All groups are done, or the leader ended it. */
  over(): void;
}

/**
 * @param led what is led now
 * @param tell what is remembered, whenever it changes
 */
export function createLeadKeeper(
  note: LeadNote,
  led: () => Led | undefined,
  tell: (before: LedBefore | undefined) => void,
): LeadKeeper {
  function keep(mark?: LeadMark): void {
    const now = led();
    if (now === undefined) return;
    const before = { key: now.key, choice: now.choice, ...(mark && { mark }) };
    note.write(before);
    tell(before);
  }

  return {
    look: () => tell(read(note.read())),
    mark(session) {
      const { name, about, place, seenAt } = session;
      // Those who wait for an agreed start begin with it, whatever becomes of this page.
      if (isWaiting(session)) keep({ place: ms(0), wall: about.startedAt, holding: false });
      else keep({ place, wall: seenAt, holding: name !== 'running' });
    },
    over: () => keep(),
  };
}

const isRecord = (value: unknown): value is Record<string, unknown> =>
  typeof value === 'object' && value !== null;
const isCount = (value: unknown): boolean => Number.isSafeInteger(value) && Number(value) >= 0;

/** What lies there may be of another version, or of somebody's hand. */
function read(value: unknown): LedBefore | undefined {
  if (!isRecord(value) || typeof value.key !== 'string') return undefined;
  const { key, choice, mark } = value;
  if (!isChoice(choice)) return undefined;
  return { key, choice, ...(isMark(mark) && { mark }) };
}

const isChoice = (value: unknown): value is LeadChoice =>
  isRecord(value) &&
  isCount(value.week) &&
  isCount(value.session) &&
  typeof value.tick === 'boolean' &&
  Array.isArray(value.groups) &&
  value.groups.every(
    (each: unknown) =>
      isRecord(each) &&
      typeof each.id === 'string' &&
      typeof each.here === 'boolean' &&
      isCount(each.minutesLater) &&
      VOICES.some((voice) => voice === each.voice),
  );

const isMark = (value: unknown): value is LeadMark =>
  isRecord(value) &&
  isCount(value.place) &&
  isCount(value.wall) &&
  typeof value.holding === 'boolean';
