import { useState } from 'react';
import type { LogEntry } from '../../domain/log/entry.ts';
import type { Here } from '../../domain/log/fields.ts';
import { beganAt, offsetIn } from '../../domain/log/local-time.ts';
import { useApp } from '../app-context.tsx';

/** Now, and the clocks by which a session is written down: those of the place where it began. */
export function useHere(entry?: LogEntry) {
  const { clock } = useApp();
  const [now] = useState(() => clock.now());
  const phone = clock.zoneTime(now);
  const zone = entry?.zone ?? phone.zone;
  const isElsewhere = zone !== phone.zone;
  const offsetAt = isElsewhere
    ? (offsetIn(zone) ?? (() => entry?.offsetMinutes ?? phone.offsetMinutes))
    : (utc: number) => clock.zoneTime(utc).offsetMinutes;
  const began = (utc: number) => beganAt(utc, { zone, offsetMinutes: offsetAt(utc) });
  return { now, zone, offsetAt, isElsewhere, began } satisfies Here & Record<string, unknown>;
}
