import { editRefusal } from '../../copy/refusals.ts';
import { useRefusal } from './workshop-context.tsx';

/** Why the last edit was not made; read out when it comes. */
export function Refused() {
  const refusal = useRefusal();
  return (
    <div role="alert">
      {refusal !== undefined && <p className="notice">{editRefusal(refusal)}</p>}
    </div>
  );
}
