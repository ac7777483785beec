/** Who needs a word. */
export function WordsPage() {
  return null;
}
