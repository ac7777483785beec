import { useSyncExternalStore } from 'react';
import { useSession } from '../app-context.tsx';
import { Marker } from './Marker.tsx';
import { Strip } from './Strip.tsx';

const low = window.matchMedia('(max-height: 720px)');
const watchLow = (changed: () => void): (() => void) => {
  low.addEventListener('change', changed);
  return () => low.removeEventListener('change', changed);
};

/** The session's strip with the place that it has come to. */
export function RunStrip() {
  const height = useSyncExternalStore(watchLow, () => low.matches) ? 48 : 76;
  const timeline = useSession((s) => s.view.timeline);
  const share = useSession((s) => {
    const total = s.view.timeline?.total ?? 1;
    return Math.round((s.view.position / total) * 1000) / 1000;
  });
  if (timeline === undefined) return null;
  return (
    <div className="marked">
      <Strip timeline={timeline} height={height} />
      <Marker share={share} height={height - 4} />
    </div>
  );
}
