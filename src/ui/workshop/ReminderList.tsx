import { useState } from 'react';
import { details as words } from '../../copy/workshop.ts';
import { isReminderId, REMINDER_IDS, REMINDERS } from '../../domain/cues/reminders.ts';
import { LIMITS } from '../../domain/programme/shape.ts';
import { LineField } from './fields.tsx';
import { useEdit } from './workshop-context.tsx';

/** Spoken reminders from the catalogue, and the leader's own, which are shown and not spoken. */
export function ReminderList({ reminders }: { reminders: readonly string[] }) {
  const edit = useEdit();
  const put = (next: readonly string[]) => edit({ kind: 'reminders', reminders: next });
  const own = reminders.filter((text) => !isReminderId(text));
  return (
    <section className="stack rule">
      <h2>{words.reminders}</h2>
      <fieldset className="stack">
        <legend>{words.spoken}</legend>
        <div className="reminders">
          {REMINDER_IDS.map((id) => (
            <label key={id} className="choice">
              <input
                type="checkbox"
                checked={reminders.includes(id)}
                onChange={(event) =>
                  put(
                    event.target.checked
                      ? [...reminders, id]
                      : reminders.filter((each) => each !== id),
                  )
                }
              />
              <span>{REMINDERS[id]}</span>
            </label>
          ))}
        </div>
      </fieldset>
      <h3>{words.free}</h3>
      {own.length > 0 && (
        <ul className="stack tight">
          {own.map((text) => (
            <li key={text} className="row spread">
              <span>{text}</span>
              <button
                type="button"
                className="text-button"
                onClick={() => put(reminders.filter((each) => each !== text))}
              >
                {words.removeReminder(text)}
              </button>
            </li>
          ))}
        </ul>
      )}
      <NewReminder
        onAdd={(text) => {
          if (!reminders.includes(text)) put([...reminders, text]);
        }}
      />
    </section>
  );
}

function NewReminder({ onAdd }: { onAdd: (text: string) => void }) {
  const [text, setText] = useState('');
  return (
    <form
      className="stack"
      onSubmit={(event) => {
        event.preventDefault();
        if (text.trim() === '') return;
        onAdd(text.trim());
        setText('');
      }}
    >
      <LineField name={words.newReminder} value={text} limit={LIMITS.sentence} onChange={setText} />
      <div>
        <button type="submit" className="button">
          {words.addReminder}
        </button>
      </div>
    </form>
  );
}
