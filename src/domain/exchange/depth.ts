/** Objects and lists inside one another: a programme needs six. */
export const DEPTH_MAX = 32;

/**
 * Whether a JSON text nests deeper than `limit`. Programs that walk through what such a text
 * makes run out of room in the end, so it is not walked through: brackets are counted.
 */
export function isDeeper(text: string, limit: number = DEPTH_MAX): boolean {
  let depth = 0;
  let isString = false;
  for (let at = 0; at < text.length; at++) {
    const letter = text[at];
    if (isString) {
      if (letter === '\\') at += 1;
      else if (letter === '"') isString = false;
    } else if (letter === '"') isString = true;
    else if (letter === '{' || letter === '[') {
      depth += 1;
      if (depth > limit) return true;
    } else if (letter === '}' || letter === ']') depth -= 1;
  }
  return false;
}
