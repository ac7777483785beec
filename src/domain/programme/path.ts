/** A step of a path: a key, or a place in a list from 0. */
export type PathStep = string | number;

const isPlain = (key: string): boolean => /^[A-Za-z_$][\w$-]*$/.test(key);

/** A key as JSON text, with nothing in it that cannot be seen. */
const quote = (key: string): string =>
  JSON.stringify(key.slice(0, 60)).replace(
    /[\u007f-\u009f\u061c\u200b-\u200f\u2028-\u202e\u2066-\u2069\ufeff]/g,
    (letter) => `\\u${letter.charCodeAt(0).toString(16).padStart(4, '0')}`,
  );

/** `weeks[1].sessions.wren`: places in lists from 0, as in the file. */
export function pathText(steps: readonly PathStep[]): string {
  let text = '';
  for (const step of steps) {
    if (typeof step === 'number') text += `[${step}]`;
    else if (isPlain(step)) text += text === '' ? step : `.${step}`;
    else text += `[${quote(step)}]`;
  }
  return text;
}
