import * as v from 'valibot';
import { fail, ok, type Result } from '../result.ts';
import { deflate, INFLATED_MAX, inflate } from './deflate.ts';
import { isDeeper } from './depth.ts';
import { RESPONSE_DICTIONARY_1 } from './dictionary.ts';
import { isPlainObject, jsonIn, ownValue } from './own.ts';
import type { AnswerCode } from './problem.ts';
import { RESPONSE_LIMITS, type Response, ResponseShape } from './response.ts';
import { fromUtf8, toUtf8 } from './utf8.ts';

const dictionary = toUtf8(RESPONSE_DICTIONARY_1);

/**
 * A response as the bytes that are sealed: JSON in UTF-8, raw deflate with the responses' own
 * dictionary. Too much for one response is refused before it is sealed.
 */
export function responseBytes(
  response: Response,
): Result<Uint8Array<ArrayBuffer>, 'too-large' | 'empty'> {
  const { entries } = response;
  if (entries.length === 0) return fail('empty');
  const bytes = toUtf8(JSON.stringify(response));
  const isLarge = entries.length > RESPONSE_LIMITS.entries || bytes.length > INFLATED_MAX;
  return isLarge ? fail('too-large') : ok(deflate(bytes, dictionary));
}

type Fault = Extract<AnswerCode, 'content' | 'damaged' | 'newer' | 'too-large'>;

/** The format's number; nothing when it is no response at all. */
function versionOf(value: unknown): number | undefined {
  if (!isPlainObject(value)) return undefined;
  const format = ownValue(value, 'format');
  const found = typeof format === 'string' ? /^towpath-response\/(\d{1,6})$/.exec(format) : null;
  return found === null ? undefined : Number(found[1]);
}

/**
 * A response from what a seal held, through every bound: sealed says who can read it, not that who
 * wrote it meant well. Keys that are not known are dropped; one wrong value refuses the whole.
 */
export function readResponse(bytes: Uint8Array): Result<Response, Fault> {
  const inflated = inflate(bytes, INFLATED_MAX, dictionary);
  if (!inflated.ok) return inflated;
  const text = fromUtf8(inflated.value);
  if (!text.ok) return text;
  const value = isDeeper(text.value) ? undefined : jsonIn(text.value);
  const version = versionOf(value);
  if (version !== undefined && version > 1) return fail('newer');
  const read = v.safeParse(ResponseShape, value, { abortEarly: true });
  // What is read from JSON is never there as `undefined`, which is all that the types differ in.
  return read.success ? ok(read.output as Response) : fail('content');
}
