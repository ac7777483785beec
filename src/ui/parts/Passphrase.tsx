import { useId, useState } from 'react';
import { leaderKeys as words } from '../../copy/lead.ts';

interface PassphraseProps {
  readonly name: string;
  readonly label?: string;
  readonly help?: string;
  readonly primary?: boolean;
  readonly onGiven: (passphrase: string) => void;
}

/** In sight while it is typed: a slip in a backup's passphrase would show only when it is too late. */
export function Passphrase(props: PassphraseProps) {
  const { name, label = words.passphrase, help = words.passphraseHelp, primary, onGiven } = props;
  const [passphrase, setPassphrase] = useState('');
  const id = useId();
  return (
    <form
      className="stack"
      onSubmit={(event) => {
        event.preventDefault();
        onGiven(passphrase);
      }}
    >
      <div className="field">
        <label htmlFor={id}>{label}</label>
        <input
          id={id}
          className="line"
          type="text"
          value={passphrase}
          autoComplete="off"
          autoCapitalize="none"
          spellCheck={false}
          aria-describedby={`${id}-help`}
          onChange={(event) => setPassphrase(event.target.value)}
        />
        <p id={`${id}-help`} className="small soft">
          {help}
        </p>
      </div>
      <div>
        <button type="submit" className={primary ? 'button primary' : 'button'}>
          {name}
        </button>
      </div>
    </form>
  );
}
