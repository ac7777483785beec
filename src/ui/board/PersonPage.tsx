/** One person. */
export function PersonPage() {
  return null;
}
