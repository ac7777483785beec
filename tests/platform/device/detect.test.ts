import { describe, expect, it } from 'vitest';
import { isEmbedded, platformOf, type Surroundings } from '../../../src/platform/device/detect.ts';

const IPHONE =
  'Mozilla/5.0 (iPhone; CPU iPhone OS 18_5 like Mac OS X) AppleWebKit/605.1.15 (KHTML, like Gecko)';
const ANDROID = 'Mozilla/5.0 (Linux; Android 15; Phone';
const ENGINE = 'AppleWebKit/537.36 (KHTML, like Gecko) Version/4.0 Chrome/150.0.0.0 Mobile';
const DESK = 'Mozilla/5.0 (Macintosh; Intel Mac OS X 10_15_7) AppleWebKit/605.1.15';

const at = (userAgent: string, more: Partial<Surroundings> = {}): Surroundings => ({
  userAgent,
  maxTouchPoints: 5,
  standalone: false,
  ...more,
});

describe('where the page runs', () => {
  it('DEV-1 knows the kind of phone, and a tablet that calls itself a computer', () => {
    expect(platformOf(at(`${IPHONE} Version/18.5 Mobile/15E148 Safari/604.1`))).toBe('ios');
    expect(platformOf(at(`${ANDROID}) ${ENGINE} Safari/537.36`))).toBe('android');
    expect(platformOf(at(`${DESK} Version/18.5 Safari/605.1.15`))).toBe('ios');
    expect(platformOf(at(`${DESK} Version/18.5 Safari/605.1.15`, { maxTouchPoints: 0 }))).toBe(
      'other',
    );
    expect(platformOf(at('Mozilla/5.0 (X11; Linux x86_64)'))).toBe('other');
  });

  it('DEV-1 takes a page without a browser around it for one inside another app', () => {
    expect(isEmbedded(at(`${IPHONE} Mobile/15E148`))).toBe(true);
    expect(isEmbedded(at(`${ANDROID}; wv) ${ENGINE} Safari/537.36`))).toBe(true);
  });

  it('DEV-1 takes a browser, an installed app and a desktop for what they are', () => {
    expect(isEmbedded(at(`${IPHONE} Version/18.5 Mobile/15E148 Safari/604.1`))).toBe(false);
    expect(isEmbedded(at(`${ANDROID}) ${ENGINE} Safari/537.36`))).toBe(false);
    expect(isEmbedded(at(`${IPHONE} Mobile/15E148`, { standalone: true }))).toBe(false);
    expect(isEmbedded(at(`${DESK} Version/18.5 Safari/605.1.15`))).toBe(false);
  });
});
