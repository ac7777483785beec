/** The list of programmes, and bringing answers in. */
export function Boards() {
  return null;
}
