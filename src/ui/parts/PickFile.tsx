import { useRef } from 'react';

interface PickFileProps {
  readonly name: string;
  readonly accept: string;
  readonly primary?: boolean;
  readonly onPick: (file: File) => void;
}

/** A button that lets the person choose a file. The same file can be chosen again. */
export function PickFile({ name, accept, primary = false, onPick }: PickFileProps) {
  const input = useRef<HTMLInputElement>(null);
  return (
    <div>
      <input
        ref={input}
        type="file"
        hidden
        aria-label={name}
        accept={accept}
        onChange={(event) => {
          const file = event.target.files?.[0];
          event.target.value = '';
          if (file !== undefined) onPick(file);
        }}
      />
      <button
        type="button"
        className={primary ? 'button primary' : 'button'}
        onClick={() => input.current?.click()}
      >
        {name}
      </button>
    </div>
  );
}
