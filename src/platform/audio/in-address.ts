/**
 * The bytes of a Blob as an address that holds them all (RFC 2397). A third longer than the bytes;
 * rejects where the Blob cannot be read.
 */
export function inAddress(blob: Blob): Promise<string> {
  return new Promise((resolve, reject) => {
    const reader = new FileReader();
    reader.onload = () => resolve(String(reader.result));
    reader.onerror = () => reject(reader.error ?? new Error('not read'));
    reader.readAsDataURL(blob);
  });
}
