import { type ReactNode, useEffect, useRef } from 'react';

interface TakeInProps {
  readonly words: {
    readonly previewTitle: string;
    readonly nothingNew: string;
    readonly take: string;
    readonly leave: string;
  };
  /** Whether there is anything to take in. */
  readonly isNews: boolean;
  readonly onTake: () => void;
  readonly onLeave: () => void;
  /** What is in the file. */
  readonly children: ReactNode;
}

/** A file that was opened: what is in it, to be taken in or left. */
export function TakeIn({ words, isNews, onTake, onLeave, children }: TakeInProps) {
  const title = useRef<HTMLHeadingElement>(null);
  // What was chosen is read before what can be done with it.
  useEffect(() => title.current?.focus(), []);
  return (
    <>
      <h3 ref={title} tabIndex={-1}>
        {words.previewTitle}
      </h3>
      {children}
      {!isNews && <p>{words.nothingNew}</p>}
      <div className="row">
        {isNews && (
          <button type="button" className="button primary" onClick={onTake}>
            {words.take}
          </button>
        )}
        <button type="button" className="button" onClick={onLeave}>
          {words.leave}
        </button>
      </div>
    </>
  );
}
