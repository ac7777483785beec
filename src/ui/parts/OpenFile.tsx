import { useId, useRef, useState } from 'react';
import { useLocation } from 'wouter';
import { welcome } from '../../copy/welcome.ts';
import { PROGRAMME_MAX_BYTES } from '../../domain/programme/programme.ts';
import { useApp } from '../app-context.tsx';

/** How many problems are told at once: the first ones usually explain the rest. */
const SHOWN = 5;

/** Opens a programme file that the person picks, or says why it was not taken. */
export function OpenFile() {
  const programmes = useApp().programmes;
  const [, go] = useLocation();
  const [problems, setProblems] = useState<readonly string[]>([]);
  const input = useRef<HTMLInputElement>(null);
  const id = useId();
  const words = welcome.file;

  const read = async (file: File) => {
    if (file.size > PROGRAMME_MAX_BYTES) return setProblems([words.tooLarge]);
    const text = await file.text().catch(() => undefined);
    if (text === undefined) return setProblems([words.unreadable]);
    const result = await programmes.getState().open(text);
    if (!result.ok) {
      // Sentences for mistakes are many, and most people never meet one.
      const { programmeProblem } = await import('../../copy/programme.ts');
      return setProblems(result.error.map(programmeProblem));
    }
    setProblems([]);
    go(`/p/${result.value.id}/groups`);
  };

  return (
    <section className="stack rule">
      <h2>{words.title}</h2>
      <input
        ref={input}
        id={id}
        type="file"
        hidden
        aria-label={words.open}
        accept=".json,.txt,application/json,text/plain"
        onChange={(event) => {
          const file = event.target.files?.[0];
          event.target.value = '';
          if (file !== undefined) void read(file);
        }}
      />
      <div>
        <button type="button" className="button" onClick={() => input.current?.click()}>
          {words.open}
        </button>
      </div>
      <div role="alert">
        {problems.length > 0 && (
          <div className="notice">
            <p>
              <strong>{words.refused}</strong>
            </p>
            <ul className="bullets">
              {problems.slice(0, SHOWN).map((problem) => (
                <li key={problem}>{problem}</li>
              ))}
            </ul>
            {problems.length > SHOWN && <p>{words.more(problems.length - SHOWN)}</p>}
          </div>
        )}
      </div>
    </section>
  );
}
