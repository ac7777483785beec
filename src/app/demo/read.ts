import type { Programme } from '../../domain/programme/programme.ts';
import read from './heron-loop.generated.json' with { type: 'json' };

/**
 * The programme that the app starts with, as the reader makes it of its text. Read when the app is
 * made and not when it is opened: a slow phone took a tenth of a second for it before each first
 * page. `npm run demo` writes it anew, and a test compares.
 */
export const DEMO = read as unknown as Programme;
