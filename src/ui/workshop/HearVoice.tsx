import { before } from '../../copy/before.ts';
import { hear } from '../../copy/hear.ts';
import { useApp, usePack } from '../app-context.tsx';

interface VoiceProps {
  /** What puts the words together could not be fetched. */
  readonly failed: boolean;
  readonly onRetry: () => void;
}

/** Why nothing is to be heard yet, and what can be done about it. */
export function HearVoice({ failed, onRetry }: VoiceProps) {
  const store = useApp().pack;
  const pack = usePack((p) => p.pack);
  if (failed) return <Trouble said={hear.notFetched} act={before.tryAgain} onAct={onRetry} />;
  if (pack.name === 'coming') {
    const percent = pack.total > 0 ? Math.floor((pack.loaded / pack.total) * 100) : 0;
    return <p role="status">{before.voiceComing(percent)}</p>;
  }
  if (pack.name === 'ready') return null;
  const retry = () => void store.getState().retry();
  return <Trouble said={hear[pack.name]} act={before.retry} onAct={retry} />;
}

function Trouble({ said, act, onAct }: { said: string; act: string; onAct: () => void }) {
  return (
    <div className="notice" role="alert">
      <p>{said}</p>
      <div>
        <button type="button" className="button" onClick={onAct}>
          {act}
        </button>
      </div>
    </div>
  );
}
