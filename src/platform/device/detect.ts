/** What is asked of the browser to know where the page runs. */
export interface Surroundings {
  readonly userAgent: string;
  readonly maxTouchPoints: number;
  /** The page was opened from the home screen. */
  readonly standalone: boolean;
}

/**
 * The kind of phone. A tablet of the same maker calls itself a desktop computer, and gives itself
 * away by its touch points.
 */
export function platformOf({
  userAgent,
  maxTouchPoints,
}: Pick<Surroundings, 'userAgent' | 'maxTouchPoints'>): 'ios' | 'android' | 'other' {
  if (/iPhone|iPad|iPod/.test(userAgent)) return 'ios';
  if (/Macintosh/.test(userAgent) && maxTouchPoints > 1) return 'ios';
  return /Android/.test(userAgent) ? 'android' : 'other';
}

/**
 * A hint that the page was opened inside another app: on an iPhone such a page does not say
 * "Safari" as a browser does, on Android it says "wv", and some say so in plain words.
 */
export function isEmbedded(at: Surroundings): boolean {
  if (at.standalone) return false;
  const { userAgent } = at;
  if (/\bInApp\b|\bWebView\b/i.test(userAgent)) return true;
  const platform = platformOf(at);
  if (platform === 'android') return /; wv\)/.test(userAgent);
  return platform === 'ios' && /AppleWebKit/.test(userAgent) && !/Safari\//.test(userAgent);
}
