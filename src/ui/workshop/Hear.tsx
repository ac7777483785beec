import '../styles/hear.css';
import { useEffect, useMemo, useState } from 'react';
import type { Hearing, PieceToHear } from '../../app/contract.ts';
import { hear } from '../../copy/hear.ts';
import { settings as words } from '../../copy/settings.ts';
import { minutes } from '../../copy/times.ts';
import { stripInWords } from '../../copy/words.ts';
import { TALK_LEVELS, type Talk } from '../../domain/cues/cue.ts';
import { sessionPlace } from '../../domain/cues/squeeze.ts';
import { stopAt } from '../../domain/cues/stops.ts';
import type { Plan } from '../../domain/programme/plan.ts';
import { FRAME_MS, ms, type Percent } from '../../domain/units.ts';
import { useApp, useSession, useSettings } from '../app-context.tsx';
import { Choices } from '../parts/Choices.tsx';
import { Marker } from '../parts/Marker.tsx';
import { timelineOf } from '../parts/plans.ts';
import { Screen } from '../parts/Screen.tsx';
import { Strip } from '../parts/Strip.tsx';
import { isUnderWay } from '../parts/session-state.ts';
import { HearLines } from './HearLines.tsx';
import { HearSave } from './HearSave.tsx';
import { HearVoice } from './HearVoice.tsx';
import { useHearing } from './use-hearing.ts';
import { useShortPlayer } from './use-short-player.ts';

/** A session to be heard, of a programme in writing or of any other. */
export interface HearSource {
  /** Such as "Week 2, session 1". */
  readonly title: string;
  readonly groupName: string;
  readonly plan: Plan;
  readonly reminders: readonly string[];
  /** The week's effort. */
  readonly target: Percent;
  /** What saved files are called, without the ending. */
  readonly fileName: string;
}

interface HearProps {
  readonly source: HearSource;
  readonly back: { readonly href: string; readonly name: string };
}

/** A session from cue to cue, heard and read; never while a session is under way. */
export function Hear({ source, back }: HearProps) {
  const { session } = useApp();
  const busy = useSession(({ view }) => isUnderWay(view.state));
  const { title, groupName, plan, reminders, target, fileName } = source;
  const timeline = timelineOf(plan);
  const piece = useMemo(
    () => ({ timeline, reminders, target, fileName }),
    [timeline, reminders, target, fileName],
  );
  useEffect(() => {
    // A play button on a headset means this sound, not a session that waits to be started.
    if (session.getState().view.state === 'ready') session.getState().close();
  }, [session]);
  return (
    <Screen title={title} sub={hear.sub(groupName, minutes(timeline.total))} back={back}>
      {busy ? <p>{hear.underWay}</p> : <Listen piece={piece} plan={plan} />}
    </Screen>
  );
}

function Listen({ piece, plan }: { piece: PieceToHear; plan: Plan }) {
  const [talk, setTalk] = useState<Talk>(useSettings((s) => s.talk));
  const { hearing, failed, retry } = useHearing(piece, talk);
  return (
    <>
      <HearVoice failed={failed} onRetry={retry} />
      <Player hearing={hearing} piece={piece} plan={plan} />
      <Choices
        legend={words.talk}
        options={TALK_LEVELS.map((value) => ({ value, name: words.talks[value][0] }))}
        value={talk}
        onChange={setTalk}
      />
      <p className="small soft">{hear.talkHelp}</p>
      <HearSave piece={piece} talk={talk} />
    </>
  );
}

interface PlayerProps {
  readonly hearing: Hearing | undefined;
  readonly piece: PieceToHear;
  readonly plan: Plan;
}

const STRIP_PX = 64;

function Player({ hearing, piece: { timeline }, plan }: PlayerProps) {
  const player = useShortPlayer(hearing);
  const { place, playing } = player;
  const stops = hearing?.stops ?? [];
  // A seek may land on the frame before.
  const index = stopAt(stops, ms(place + FRAME_MS));
  const at = hearing === undefined ? 0 : sessionPlace(hearing.short, place);
  const goTo = (to: number) => {
    const stop = stops[Math.min(stops.length - 1, Math.max(0, to))];
    if (stop !== undefined) player.play(stop.from);
  };
  return (
    <>
      <audio ref={player.ref} hidden preload="auto" {...player.listeners} />
      <div className="hear-head">
        <div className="marked">
          <Strip timeline={timeline} height={STRIP_PX} label={stripInWords(plan)} />
          <Marker share={at / timeline.total} height={STRIP_PX - 4} />
        </div>
        <div className="hear-controls">
          <button type="button" className="button" onClick={() => goTo(index - 1)}>
            {hear.previous}
          </button>
          {hearing?.sound !== undefined && (
            <button
              type="button"
              className="button hear-play"
              onClick={() => (playing ? player.pause() : player.play())}
            >
              {playing ? hear.pause : hear.play}
            </button>
          )}
          <button type="button" className="button" onClick={() => goTo(index + 1)}>
            {hear.next}
          </button>
        </div>
        <p role="alert">{player.refused && hear.refused}</p>
      </div>
      <HearLines stops={stops} current={index} onChoose={goTo} />
    </>
  );
}
