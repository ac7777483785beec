/** People by weeks. */
export function BoardPage() {
  return null;
}
