const SMALL = [
  'zero one two three four five six seven eight nine ten eleven twelve thirteen fourteen fifteen',
  'sixteen seventeen eighteen nineteen',
].flatMap((line) => line.split(' '));
const TENS = ['twenty', 'thirty', 'forty', 'fifty'];

/** Seconds in a length of time said in words: an own reading of English, not the speaker's tables. */
export function secondsSaid(words: string): number {
  let total = 0;
  let number = 0;
  let inMinutes = false;
  for (const word of words.split(' ')) {
    if (word === 'an') number = 1;
    else if (SMALL.includes(word)) number += SMALL.indexOf(word);
    else if (TENS.includes(word)) number += 20 + 10 * TENS.indexOf(word);
    else if (/^hours?$/.test(word)) [total, number] = [total + 3600 * number, 0];
    else if (/^minutes?$/.test(word)) [total, number, inMinutes] = [total + 60 * number, 0, true];
    else if (/^seconds?$/.test(word)) [total, number] = [total + number, 0];
    else if (word !== 'and') throw new Error(`no number: ${word}`);
  }
  if (number > 0 && !inMinutes) throw new Error(`a number of what? ${words}`);
  return total + number;
}
