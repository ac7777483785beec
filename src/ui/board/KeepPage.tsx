/** Keeping, handing over and letting go. */
export function KeepPage() {
  return null;
}
