import { type ReactNode, useId } from 'react';
import { fieldProblem } from '../../copy/by-hand.ts';
import type { FieldCode } from '../../domain/log/fields.ts';

/** What an input needs to be known by its name, its help and what is wrong with it. */
export interface FieldProps {
  readonly id: string;
  readonly 'aria-describedby': string;
  readonly 'aria-invalid': boolean;
}

/** A named input; what cannot be is said under it, at once. */
export function Field(props: {
  readonly name: string;
  readonly help?: string;
  readonly problem?: FieldCode | undefined;
  /** What is wrong in a sentence, where it has no code. */
  readonly wrong?: string | undefined;
  readonly children: (input: FieldProps) => ReactNode;
}) {
  const { name, help, problem, children } = props;
  const wrong = props.wrong ?? (problem && fieldProblem(problem));
  const id = useId();
  const [helpId, problemId] = [`${id}-help`, `${id}-problem`];
  return (
    <div className="field">
      <label htmlFor={id}>
        <strong>{name}</strong>
      </label>
      <span className="small soft" id={helpId}>
        {help}
      </span>
      {children({
        id,
        'aria-describedby': `${problemId} ${helpId}`,
        'aria-invalid': wrong !== undefined,
      })}
      <p className="cannot" id={problemId} role="alert">
        {wrong}
      </p>
    </div>
  );
}

/** Leads to the first field of a page that cannot be as it is. */
export function toFirstProblem(): void {
  // After the problems were drawn.
  requestAnimationFrame(() =>
    document.querySelector<HTMLElement>('.field [aria-invalid="true"]')?.focus(),
  );
}
