/** Who came. */
export function ListPage() {
  return null;
}
