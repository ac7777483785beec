import { groupsLine, leading } from '../../copy/lead-day.ts';
import { lockScreen } from '../../copy/lock-screen.ts';
import { timeOfDay } from '../../copy/times.ts';
import { type LeadNow, leadAt } from '../../domain/lead/lead-at.ts';
import { ms } from '../../domain/units.ts';
import type { NowPlaying } from '../ports.ts';
import type { Led, SessionView } from '../session-contract.ts';

/** The lock screen's three lines: what it is now, what comes next, whose session it is. */
export function nowPlaying(view: SessionView): NowPlaying {
  const album = [view.programmeTitle, view.groupName].filter((part) => part !== '').join(' · ');
  return { ...titles(view), album };
}

function titles(view: SessionView): { title: string; artist: string } {
  const { segment, next } = view;
  if (view.state === 'finished') return { title: lockScreen.finished, artist: '' };
  if (view.state === 'ended-early') return { title: lockScreen.ended, artist: '' };
  if (view.lead !== undefined) return leadTitles(view, view.lead);
  if (view.purpose === 'pocket-check' || segment === undefined) {
    return { title: lockScreen.pocketCheck, artist: '' };
  }
  if (view.wait !== undefined) {
    const at = timeOfDay(view.wait.startsAt);
    return view.state === 'waiting'
      ? { title: lockScreen.startsAt(at), artist: lockScreen.next(segment) }
      : { title: lockScreen.waiting, artist: lockScreen.startsAt(at) };
  }
  if (view.state === 'holding') {
    return { title: lockScreen.holding, artist: lockScreen.goesOn(segment) };
  }
  if (view.state === 'interrupted' || view.state === 'stalled') {
    return { title: lockScreen.waiting, artist: lockScreen.goesOn(segment) };
  }
  if (view.lane === 'one-more') {
    return { title: lockScreen.oneMore(segment), artist: lockScreen.goesOn(segment) };
  }
  return { title: lockScreen.segment(segment), artist: lockScreen.next(next) };
}

/** What each group does now; and what those do that change next, or all of them after a hold. */
function leadTitles(view: SessionView, { plan }: Led): { title: string; artist: string } {
  if (view.wait !== undefined) {
    const at = lockScreen.startsAt(timeOfDay(view.wait.startsAt));
    const first = leading.thenLine(groupsLine(leadAt(plan, ms(0))));
    return view.state === 'waiting'
      ? { title: at, artist: first }
      : { title: lockScreen.waiting, artist: at };
  }
  const now = leadAt(plan, view.position);
  if (view.state === 'holding') return { title: lockScreen.holding, artist: groupsLine(now) };
  if (view.state !== 'running') return { title: lockScreen.waiting, artist: groupsLine(now) };
  const then = view.next === undefined ? [] : changed(now, leadAt(plan, view.next.start));
  const next = then.length === 0 ? lockScreen.next(undefined) : leading.thenLine(groupsLine(then));
  return { title: groupsLine(now), artist: next };
}

const changed = (now: readonly LeadNow[], next: readonly LeadNow[]): readonly LeadNow[] =>
  next.filter((each, n) => what(each) !== what(now[n]));

const what = (each: LeadNow | undefined): unknown =>
  each?.state === 'moves' ? each.segment : each?.state;
