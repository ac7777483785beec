import { lockScreen } from '../../copy/lock-screen.ts';
import { timeOfDay } from '../../copy/times.ts';
import type { SessionView } from '../contract.ts';
import type { NowPlaying } from '../ports.ts';

/** The lock screen's three lines: what it is now, what comes next, whose session it is. */
export function nowPlaying(view: SessionView): NowPlaying {
  const album = [view.programmeTitle, view.groupName].filter((part) => part !== '').join(' · ');
  return { ...titles(view), album };
}

function titles(view: SessionView): { title: string; artist: string } {
  const { segment, next } = view;
  if (view.state === 'finished') return { title: lockScreen.finished, artist: '' };
  if (view.state === 'ended-early') return { title: lockScreen.ended, artist: '' };
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
