/** Our sign: two hills of running among the walking, over a path. */
export function Mark() {
  return (
    <svg viewBox="0 0 48 27" aria-hidden="true">
      <path
        d="M1 20V14H10.5L11.5 8H19L20 14H26L27.5 3H37.5L39 14H47V20Z"
        fill="none"
        stroke="currentColor"
        strokeWidth="1.6"
        strokeLinejoin="round"
      />
      <path
        d="M10.5 20V14L11.5 8H19L20 14V20ZM26 20V14L27.5 3H37.5L39 14V20Z"
        fill="currentColor"
      />
      <path
        d="M2 19L6.5 14.5M6 19.5L10 15.5M21 19L25 15M40 19L44 15"
        stroke="currentColor"
        strokeWidth="1.2"
      />
      <path d="M1 24.5H47" stroke="var(--accent)" strokeWidth="3" />
    </svg>
  );
}
