/** What comes next week. */
export function NextPage() {
  return null;
}
