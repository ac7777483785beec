import programme from './heron-loop.json' with { type: 'json' };

/** The programme that the app starts with, as the text of a `towpath-programme/1` file. */
export const DEMO_PROGRAMME_TEXT: string = JSON.stringify(programme);
