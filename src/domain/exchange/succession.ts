import { isPlainObject, ownValue } from './own.ts';
import { toUtf8 } from './utf8.ts';

/**
 * One step of a leader's change of keys: the key that was, and its signature over the key that
 * came next. Both base64url. Stands in the file as `leader.was`, oldest first.
 */
export interface Succession {
  readonly sign: string;
  readonly proof: string;
}

/** More changes than these are not followed: a participant who missed more compares six digits. */
export const SUCCESSION_MAX = 4;

/** What an old key signs. It is no JSON, so that it can never be taken for a programme. */
export const successionBytes = (from: string, to: string): Uint8Array<ArrayBuffer> =>
  toUtf8(`towpath-key/1\n${from}\n${to}`);

const KEY = /^[\w-]{44}$/;
const PROOF = /^[\w-]{86}$/;

function readStep(value: unknown): Succession | undefined {
  if (!isPlainObject(value)) return undefined;
  const sign = ownValue(value, 'sign');
  const proof = ownValue(value, 'proof');
  if (typeof sign !== 'string' || typeof proof !== 'string') return undefined;
  return KEY.test(sign) && PROOF.test(proof) ? { sign, proof } : undefined;
}

/**
 * The changes of keys that a programme's text tells, not yet verified. One that is not right ends
 * the row, so that nothing before it counts.
 */
export function readSuccession(text: string): readonly Succession[] {
  const json: unknown = JSON.parse(text);
  const leader = isPlainObject(json) ? ownValue(json, 'leader') : undefined;
  const was = isPlainObject(leader) ? ownValue(leader, 'was') : undefined;
  if (!Array.isArray(was)) return [];
  const steps: Succession[] = [];
  for (const value of was.slice(-SUCCESSION_MAX).reverse()) {
    const step = readStep(value);
    if (step === undefined) break;
    steps.unshift(step);
  }
  return steps;
}

/** What has to be verified for a row of changes to lead to `key`: each by the key before it. */
export const successionClaims = (
  steps: readonly Succession[],
  key: string,
): readonly {
  readonly by: string;
  readonly bytes: Uint8Array<ArrayBuffer>;
  readonly proof: string;
}[] =>
  steps.map(({ sign, proof }, n) => ({
    by: sign,
    bytes: successionBytes(sign, steps[n + 1]?.sign ?? key),
    proof,
  }));
