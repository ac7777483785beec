import { Link } from 'wouter';
import type { Choice, Medium } from '../../app/session-contract.ts';
import { before } from '../../copy/before.ts';
import { isReminderId, REMINDERS } from '../../domain/cues/reminders.ts';
import type { Programme, SessionPlan } from '../../domain/programme/programme.ts';
import { useApp, usePack } from '../app-context.tsx';

/** Hearing or watching, what to do with the phone, and a cue to set the volume by. */
export function Manner({ medium, silent }: { medium: Medium; silent: boolean }) {
  const session = useApp().session;
  const sound = medium === 'sound';
  return (
    <section className="stack rule">
      <p>{sound ? before.words : silent ? before.silentWords : before.watchWords}</p>
      <div className="row">
        {sound && <CueButton onPlay={() => session.getState().playCueNow()} />}
        <Link href="/settings" className="text-button">
          {sound ? before.hearLine : before.watchLine} {before.changeThis}
        </Link>
      </div>
    </section>
  );
}

function CueButton({ onPlay }: { onPlay: () => void }) {
  return (
    <button type="button" className="button" onClick={onPlay} title={before.playCueHelp}>
      {before.playCue}
    </button>
  );
}

/** What the leader wants kept in mind on the way, as a list; nothing where there is none. */
export function Reminders({ programme }: { programme: Programme }) {
  const lines = programme.reminders.map((each) => (isReminderId(each) ? REMINDERS[each] : each));
  if (lines.length === 0) return null;
  return (
    <section className="stack">
      <h2>{before.reminders}</h2>
      <ul className="bullets">
        {lines.map((line) => (
          <li key={line}>{line}</li>
        ))}
      </ul>
    </section>
  );
}

/** What few people need: all words beforehand, the leader's own text, the sound as a file, the check again. */
export function More({ choice, plan }: { choice: Choice; plan: SessionPlan }) {
  const exporter = useApp().exporter;
  const voice = usePack((p) => p.pack.name === 'ready');
  return (
    <section className="stack rule">
      <Link
        href={`/p/${choice.programmeId}/${choice.week}/${choice.session}/hear`}
        className="text-button"
      >
        {before.hearFirst}
      </Link>
      <Link href="/cautions" className="text-button">
        {before.cautions}
      </Link>
      <Link href="/pocket" className="text-button">
        {before.pocket}
      </Link>
      <details>
        <summary>{before.save}</summary>
        <div className="stack">
          <p>{before.saveHelp}</p>
          {voice ? (
            <div className="row">
              <button
                type="button"
                className="button"
                onClick={() => void exporter.track(choice, 'mp3')}
              >
                {before.saveMp3}
              </button>
              <button
                type="button"
                className="button"
                onClick={() => void exporter.track(choice, 'vtt')}
              >
                {before.saveVtt}
              </button>
            </div>
          ) : (
            <p>{before.saveNeedsVoice}</p>
          )}
        </div>
      </details>
      <details>
        <summary>{before.asWritten}</summary>
        <p className="written">{plan.text}</p>
      </details>
    </section>
  );
}
