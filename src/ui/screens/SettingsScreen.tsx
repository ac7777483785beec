import { Link } from 'wouter';
import { again } from '../../copy/again.ts';
import { before } from '../../copy/before.ts';
import { watching } from '../../copy/running.ts';
import { settings as words } from '../../copy/settings.ts';
import { day } from '../../copy/times.ts';
import { TALK_LEVELS } from '../../domain/cues/cue.ts';
import { useApp, useDevice, useSettings } from '../app-context.tsx';
import { Choices } from '../parts/Choices.tsx';
import { useDetour } from '../parts/came-from.ts';
import { useDateAt } from '../parts/date-at.ts';
import { InstallHint } from '../parts/InstallHint.tsx';
import { Screen } from '../parts/Screen.tsx';

const MODES = ['hear', 'watch'] as const;
const APPEARANCES = ['auto', 'light', 'dark'] as const;

/** How much is said, hearing or watching, vibration, appearance; and the ways to the rest. */
export function SettingsScreen() {
  const store = useApp().settings;
  const settings = useSettings((s) => s);
  const canVibrate = useDevice((d) => d.canVibrate);
  const change = store.getState().change;
  return (
    <Screen title={words.title} sub={words.next}>
      <Choices
        legend={words.talk}
        list
        value={settings.talk}
        onChange={(talk) => void change({ talk })}
        options={TALK_LEVELS.map((value) => option(value, words.talks[value]))}
      />
      <Choices
        legend={words.mode}
        list
        value={settings.mode}
        onChange={(mode) => void change({ mode })}
        options={MODES.map((value) => option(value, words.modes[value]))}
      />
      {settings.mode === 'watch' && (
        <div className="notice">
          <p>{watching.truth}</p>
          <p>{watching.battery}</p>
          {canVibrate && settings.vibration && <p>{watching.vibration}</p>}
        </div>
      )}
      {canVibrate && (
        <label className="choice start">
          <input
            type="checkbox"
            checked={settings.vibration}
            onChange={(event) => void change({ vibration: event.target.checked })}
          />
          <span>
            {words.vibration}
            <small>{words.vibrationHelp}</small>
          </span>
        </label>
      )}
      <Choices
        legend={words.appearance}
        list
        value={settings.appearance}
        onChange={(appearance) => void change({ appearance })}
        options={APPEARANCES.map((value) => option(value, words.appearances[value]))}
      />
      <label className="choice start">
        <input
          type="checkbox"
          checked={settings.askAgain ?? false}
          onChange={(event) => void change({ askAgain: event.target.checked })}
        />
        <span>
          {again.setting}
          <small>{again.settingHelp}</small>
        </span>
      </label>
      <PocketLine />
      <InstallHint />
      <Ways />
    </Screen>
  );
}

const option = <T extends string>(value: T, [name, help]: readonly [string, string]) => ({
  value,
  name,
  help,
});

function PocketLine() {
  const record = useSettings((s) => s.pocketCheck);
  const skipped = useSettings((s) => s.pocketCheckSkipped === true);
  const dateAt = useDateAt();
  const detour = useDetour();
  return (
    <section className="stack rule">
      <h2>{words.pocket}</h2>
      <p>
        {record !== undefined
          ? words.pocketDone(day(dateAt(record.at)))
          : skipped
            ? words.pocketSkipped
            : words.pocketNever}{' '}
        {before.checkHelp}
      </p>
      <div>
        <button type="button" className="button" onClick={() => detour('/pocket')}>
          {words.pocketDo}
        </button>
      </div>
    </section>
  );
}

function Ways() {
  return (
    <section className="stack tight rule">
      <Link href="/records" className="text-button">
        {words.records}
      </Link>
      <Link href="/cautions" className="text-button">
        {words.cautions}
      </Link>
      <Link href="/about" className="text-button">
        {words.about}
      </Link>
    </section>
  );
}
