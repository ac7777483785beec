import { fail, ok, type Result } from '../result.ts';
import { fromBase64Url, toBase64Url } from './base64url.ts';

/** The curve P-256: y^2 = x^3 - 3x + b over the field of P (NIST SP 800-186, section 3.2.1.3). */
const P = 0xffffffff00000001000000000000000000000000ffffffffffffffffffffffffn;
const B = 0x5ac635d8aa3a93e7b3ebbd55769886bc651d06b0cc53b0f63bce3c3e27d2604bn;

const COORDINATE_BYTES = 32;

const toNumber = (bytes: Uint8Array): bigint =>
  bytes.reduce((value, byte) => (value << 8n) | BigInt(byte), 0n);

const toBytes = (value: bigint): Uint8Array =>
  Uint8Array.from({ length: COORDINATE_BYTES }, (_, n) =>
    Number((value >> BigInt(8 * (COORDINATE_BYTES - 1 - n))) & 255n),
  );

function power(base: bigint, exponent: bigint): bigint {
  let result = 1n;
  let square = base % P;
  for (let left = exponent; left > 0n; left >>= 1n) {
    if (left & 1n) result = (result * square) % P;
    square = (square * square) % P;
  }
  return result;
}

/** Square of the y that belongs to an x. */
const squareAt = (x: bigint): bigint => (((x * x * x - 3n * x + B) % P) + P) % P;

/**
 * A public key as it stands in a programme: its x and which of the two y it is, 33 bytes, 44
 * letters (SEC 1, section 2.3.3), which is half as long in a link as the point in full.
 *
 * @param point the point in full: 4, x, y, 65 bytes
 */
export function compressPoint(point: Uint8Array): string {
  const x = point.subarray(1, 1 + COORDINATE_BYTES);
  const isOdd = ((point[2 * COORDINATE_BYTES] ?? 0) & 1) === 1;
  return toBase64Url(Uint8Array.of(isOdd ? 3 : 2, ...x));
}

/**
 * The point in full, 65 bytes, of a key in a programme (SEC 1, section 2.3.4), because not every
 * browser imports the short form. Anything that is not a point of the curve is refused.
 */
export function expandPoint(key: string): Result<Uint8Array<ArrayBuffer>, 'key'> {
  const bytes = fromBase64Url(key);
  if (!bytes.ok || bytes.value.length !== 1 + COORDINATE_BYTES) return fail('key');
  const [sign = 0] = bytes.value;
  const x = toNumber(bytes.value.subarray(1));
  if ((sign !== 2 && sign !== 3) || x >= P) return fail('key');
  const square = squareAt(x);
  const root = power(square, (P + 1n) / 4n);
  if ((root * root) % P !== square) return fail('key');
  const y = (root & 1n) === BigInt(sign & 1) ? root : P - root;
  return ok(Uint8Array.of(4, ...toBytes(x), ...toBytes(y)));
}
