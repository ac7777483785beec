import { useLocation } from 'wouter';
import { welcome } from '../../copy/welcome.ts';
import { useApp } from '../app-context.tsx';
import { PickFile } from './PickFile.tsx';

/** Opens a file that the person picks on the page where it is looked at before it is kept. */
export function OpenFile() {
  const received = useApp().received;
  const [, go] = useLocation();
  return (
    <section className="stack rule">
      <h2>{welcome.file.title}</h2>
      <PickFile
        name={welcome.file.open}
        accept="image/*,.json,.txt,application/json,text/plain"
        onPick={(file) => {
          go('/join');
          void received.getState().openFile(file);
        }}
      />
    </section>
  );
}
