import { useState } from 'react';
import type { PieceToHear } from '../../app/contract.ts';
import { before } from '../../copy/before.ts';
import { hear } from '../../copy/hear.ts';
import type { Talk } from '../../domain/cues/cue.ts';
import { useApp, usePack } from '../app-context.tsx';

/** The whole session as files, for someone without the app. */
export function HearSave({ piece, talk }: { piece: PieceToHear; talk: Talk }) {
  const { exporter } = useApp();
  const voice = usePack(({ pack }) => pack.name === 'ready');
  const [failed, setFailed] = useState(false);
  const save = (what: 'mp3' | 'vtt') => () => {
    setFailed(false);
    exporter.save(piece, talk, what).catch(() => setFailed(true));
  };
  return (
    <section className="stack rule">
      <h2>{hear.saveTitle}</h2>
      <p>{hear.saveHelp}</p>
      {voice ? (
        <div className="row">
          <button type="button" className="button" onClick={save('mp3')}>
            {hear.saveMp3}
          </button>
          <button type="button" className="button" onClick={save('vtt')}>
            {hear.saveVtt}
          </button>
        </div>
      ) : (
        <p>{before.saveNeedsVoice}</p>
      )}
      <p role="alert">{failed && hear.saveFailed}</p>
    </section>
  );
}
