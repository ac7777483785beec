import { useLocation } from 'wouter';

interface HistoryState {
  readonly from?: unknown;
}

/** Opens a page that leads back to the one that is open now. */
export function useDetour(): (to: string) => void {
  const [path, go] = useLocation();
  return (to) => go(to, { state: { from: path } });
}

/** Where a detour leads back to. */
export function cameFrom(otherwise: string): string {
  const state = window.history.state as HistoryState | null;
  return typeof state?.from === 'string' ? state.from : otherwise;
}
