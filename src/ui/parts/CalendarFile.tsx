import { useEffect, useId, useState } from 'react';
import { Link } from 'wouter';
import type { CalendarPreview, CalendarWish } from '../../app/records-contract.ts';
import { calendarLine, WEEKDAY_NAMES, WEEKDAYS, records as words } from '../../copy/records.ts';
import type { Programme } from '../../domain/programme/programme.ts';
import { useApp, useProgrammes } from '../app-context.tsx';
import { Choices } from './Choices.tsx';

/** Sessions to come as a calendar file: for a programme in which a group is chosen. */
export function CalendarFile() {
  const programmes = useProgrammes((p) => p.programmes);
  const chosen = useProgrammes((p) => p.chosen);
  const followed = programmes.filter(({ id }) => chosen[id] !== undefined);
  const [picked, setPicked] = useState<string>();
  const programme = followed.find(({ id }) => id === picked) ?? followed.at(-1);
  return (
    <section className="stack rule">
      <h2>{words.calendar}</h2>
      <p>{words.calendarBody}</p>
      {followed.length > 1 && (
        <Choices
          legend={words.programme}
          list
          value={programme?.id}
          onChange={setPicked}
          options={followed.map(({ id, title }) => ({ value: id, name: title }))}
        />
      )}
      {programme === undefined ? (
        <NoGroup programme={programmes.at(-1)} />
      ) : (
        <Plan key={programme.id} programme={programme} groupId={chosen[programme.id] ?? ''} />
      )}
    </section>
  );
}

function NoGroup({ programme }: { programme: Programme | undefined }) {
  return (
    <>
      <p>{words.noGroup}</p>
      <p>
        <Link
          className="text-button"
          href={programme === undefined ? '/start' : `/p/${programme.id}/groups`}
        >
          {words.chooseGroup}
        </Link>
      </p>
    </>
  );
}

const ALARMS = ['none', '0', '30', '60'] as const;
type Alarm = (typeof ALARMS)[number];

/** Tuesday, Thursday and Saturday or Sunday: a day between any two. */
const DAYS: readonly (readonly number[])[] = [[], [6], [2, 6], [2, 4, 6], [1, 3, 5, 7]];

const minutesOf = (time: string): number => {
  const [hours = 0, minutes = 0] = time.split(':').map(Number);
  return hours * 60 + minutes;
};

/** What a wish comes to; nothing until it is known. */
function usePreview(wish: CalendarWish): CalendarPreview | 'nothing' | undefined {
  const records = useApp().records;
  const [preview, setPreview] = useState<CalendarPreview | 'nothing'>();
  const text = JSON.stringify(wish);
  useEffect(() => {
    let isLate = false;
    records().then(
      (made) => {
        if (!isLate) setPreview(made.calendar(JSON.parse(text) as CalendarWish) ?? 'nothing');
      },
      () => undefined,
    );
    return () => {
      isLate = true;
    };
  }, [records, text]);
  return preview;
}

function Plan({ programme, groupId }: { programme: Programme; groupId: string }) {
  const records = useApp().records;
  const most = Math.max(...programme.weeks.map(({ timesPerWeek }) => timesPerWeek.max));
  const least = Math.min(...programme.weeks.map(({ timesPerWeek }) => timesPerWeek.min));
  const [days, setDays] = useState<readonly number[]>(DAYS[Math.min(most, 4)] ?? []);
  const [time, setTime] = useState('18:00');
  const [alarm, setAlarm] = useState<Alarm>('30');
  const [said, setSaid] = useState('');
  const id = useId();
  const wish: CalendarWish = {
    programmeId: programme.id,
    groupId,
    days,
    minutes: minutesOf(time),
    ...(alarm === 'none' ? {} : { alarmMinutes: Number(alarm) }),
  };
  const preview = usePreview(wish);
  const canSave = typeof preview === 'object' && time !== '';
  const save = async () => {
    try {
      await (await records()).saveCalendar(wish);
      setSaid(words.given);
    } catch {
      setSaid(words.notLoaded);
    }
  };
  return (
    <>
      <DayBoxes days={days} onChange={setDays} help={words.daysHelp(least, most)} />
      <div className="field">
        <label htmlFor={id}>{words.time}</label>
        <input
          id={id}
          className="line"
          type="time"
          required
          value={time}
          aria-describedby={`${id}-help`}
          onChange={(event) => setTime(event.target.value)}
        />
        <p id={`${id}-help`} className="small soft">
          {words.calendarTime}
        </p>
      </div>
      <Choices
        legend={words.alarm}
        value={alarm}
        onChange={setAlarm}
        options={ALARMS.map((value) => ({ value, name: words.alarms[value] }))}
      />
      <p role="status">
        {days.length === 0
          ? words.noDays
          : preview === 'nothing'
            ? words.nothingToPlan
            : preview && calendarLine(preview.sessions, preview.first, preview.last)}
      </p>
      <div>
        <button type="button" className="button" disabled={!canSave} onClick={() => void save()}>
          {words.saveCalendar}
        </button>
      </div>
      <p role="status" className="small">
        {said}
      </p>
      <p className="small soft">{words.calendarAgain}</p>
    </>
  );
}

interface DayBoxesProps {
  readonly days: readonly number[];
  readonly onChange: (days: readonly number[]) => void;
  readonly help: string;
}

function DayBoxes({ days, onChange, help }: DayBoxesProps) {
  const id = useId();
  return (
    <fieldset className="stack" aria-describedby={id}>
      <legend>{words.days}</legend>
      <p id={id} className="small soft">
        {help}
      </p>
      <div className="choices">
        {WEEKDAYS.map((name, n) => (
          <label key={name} className="choice">
            <input
              type="checkbox"
              checked={days.includes(n + 1)}
              aria-label={WEEKDAY_NAMES[n]}
              onChange={(event) =>
                onChange(
                  event.target.checked
                    ? [...days, n + 1].sort()
                    : days.filter((day) => day !== n + 1),
                )
              }
            />
            <span>{name}</span>
          </label>
        ))}
      </div>
    </fieldset>
  );
}
