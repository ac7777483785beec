const TABLE = Uint32Array.from({ length: 256 }, (_, n) => {
  let value = n;
  for (let bit = 0; bit < 8; bit++) value = value & 1 ? (value >>> 1) ^ 0xedb88320 : value >>> 1;
  return value;
});

/** Bytes of a checksum. */
export const CRC_BYTES = 4;

/** A checksum under way: what it begins with, one byte more, and what has come of it. */
export const CRC_START = 0xffffffff;
/** The sum after one byte more. */
export const crcStep = (crc: number, byte: number): number =>
  (TABLE[(crc ^ byte) & 255] ?? 0) ^ (crc >>> 8);
/** The checksum of all bytes that were stepped through: 32 bits, not negative. */
export const crcEnd = (crc: number): number => (crc ^ 0xffffffff) >>> 0;

/** CRC-32 as in ISO 3309 and RFC 1952, section 8: finds damage, and keeps nobody from making it. */
export function crc32(bytes: Uint8Array): number {
  let crc = CRC_START;
  for (const byte of bytes) crc = crcStep(crc, byte);
  return crcEnd(crc);
}

/** A checksum as four bytes, the highest first. */
export const crcBytes = (crc: number): Uint8Array =>
  Uint8Array.of(crc >>> 24, (crc >>> 16) & 255, (crc >>> 8) & 255, crc & 255);
