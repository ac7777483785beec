/** Where the session is, as a share of its length, on a strip of the same box. */
export function Marker({ share, height }: { share: number; height: number }) {
  return (
    <div className="marker" style={{ left: `${Math.min(100, Math.max(0, share * 100))}%`, height }}>
      <svg width="20" height={height} viewBox={`0 0 20 ${height}`} aria-hidden="true">
        <path d={`M10 6V${height}`} stroke="var(--paper)" strokeWidth="7" />
        <path d="M2 0H18L10 12Z" fill="var(--accent)" stroke="var(--paper)" strokeWidth="1.5" />
        <path d={`M10 8V${height}`} stroke="var(--accent)" strokeWidth="3" />
      </svg>
    </div>
  );
}
