import { SENT_KEYS } from '../programme/keys.ts';
import { isPlainObject } from './own.ts';
import type { Succession } from './succession.ts';

/** What a leader's keys add to a programme when it goes out. */
export interface LeaderKeys {
  readonly sign: string;
  readonly seal: string;
  readonly was: readonly Succession[];
}

interface Outgoing {
  readonly revision: number;
  readonly keys?: LeaderKeys;
  readonly change?: string;
}

type Json = Readonly<Record<string, unknown>>;

/**
 * A programme's text as it goes out: without spare space, so that it is short, its keys in the
 * order that the dictionary of codes knows, keys that this version does not know kept behind them.
 *
 * @param text a programme file that can be read
 * @param out without `keys`, the leader's keys are taken out and the programme goes unsigned
 */
export function outgoingText(text: string, { revision, keys, change }: Outgoing): string {
  const file = JSON.parse(text.replace(/^\ufeff/, '')) as Json;
  const given = isPlainObject(file.leader) ? (file.leader as Json) : {};
  const { sign: _sign, seal: _seal, was: _was, name, ...others } = given;
  const leader = {
    name,
    sign: keys?.sign ?? null,
    seal: keys?.seal ?? null,
    ...(keys === undefined || keys.was.length === 0 ? {} : { was: keys.was }),
    ...others,
  };
  const { change: _change, ...rest } = file;
  const whole = { ...ordered(rest), revision, leader, ...(change ? { change } : {}) };
  return JSON.stringify(whole);
}

/** A key called `__proto__` stays one key among others. */
function ordered(file: Json): Json {
  const first = SENT_KEYS.filter((key) => Object.hasOwn(file, key));
  const rest = Object.keys(file).filter((key) => !(SENT_KEYS as readonly string[]).includes(key));
  return Object.fromEntries([...first, ...rest].map((key) => [key, file[key]]));
}

/**
 * Whether two programmes say the same but for what sending adds: revision, keys, and the line on
 * what changed.
 */
export const saysTheSame = (one: string, other: string): boolean =>
  outgoingText(one, { revision: 1 }) === outgoingText(other, { revision: 1 });
