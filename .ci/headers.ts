/**
 * What the app may do in a browser: nothing that it does not bring along. Two policies may name a
 * script, each the one of its name: `app-sw` our service worker, and `app-intake` the worker that
 * opens answers.
 */
export const CONTENT_POLICY = [
  "default-src 'none'",
  "script-src 'self'",
  "style-src 'self'",
  "img-src 'self' data: blob:",
  // A sound in its own address: for an engine that does not read the address of a Blob.
  "media-src 'self' blob: data:",
  "connect-src 'self'",
  "font-src 'self'",
  "worker-src 'self'",
  "manifest-src 'self'",
  "object-src 'none'",
  "base-uri 'none'",
  "form-action 'none'",
  "require-trusted-types-for 'script'",
  'trusted-types app-sw app-intake',
].join('; ');

/** Headers for every file: the policy again, with the one part that only a header can say. */
export const SECURITY_HEADERS: Readonly<Record<string, string>> = {
  'Content-Security-Policy': `${CONTENT_POLICY}; frame-ancestors 'none'`,
  'X-Content-Type-Options': 'nosniff',
  'Referrer-Policy': 'no-referrer',
  'Cross-Origin-Opener-Policy': 'same-origin',
  'Permissions-Policy': 'geolocation=(), microphone=(), payment=(), usb=()',
};

/**
 * How long a browser may keep a file without asking. Names under `assets/` carry a hash of the
 * content, so they never change; everything else keeps its address and must be asked for.
 */
export const cacheRule = (path: string): string =>
  path.startsWith('/assets/') ? 'public, max-age=31536000, immutable' : 'no-cache';
