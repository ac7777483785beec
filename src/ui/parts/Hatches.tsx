import type { Texture } from './strip-shape.ts';

/** Hatches in the ink of their surroundings. */
export function Hatches({ id, scale = 1 }: { id: string; scale?: number }) {
  const lines = (name: Texture, gap: number, width: number, cross = false) => (
    <pattern
      id={`${id}-${name}`}
      width={gap * scale}
      height={gap * scale}
      patternUnits="userSpaceOnUse"
      patternTransform="rotate(45)"
    >
      <path
        d={`M0 0V${gap * scale}${cross ? `M0 0H${gap * scale}` : ''}`}
        stroke="currentColor"
        strokeWidth={width * scale * 2}
      />
    </pattern>
  );
  return (
    <defs>
      <pattern
        id={`${id}-still`}
        width={6 * scale}
        height={6 * scale}
        patternUnits="userSpaceOnUse"
      >
        <circle cx={3 * scale} cy={3 * scale} r={0.9 * scale} fill="currentColor" />
      </pattern>
      {lines('walk', 8, 0.6)}
      {lines('brisk', 4.5, 0.75)}
      {lines('jog', 4.5, 0.8, true)}
    </defs>
  );
}

/** What to fill with for a texture. `id` is that of the `Hatches` in the same picture. */
export const fillOf = (id: string, texture: Texture): string =>
  texture === 'run' ? 'currentColor' : `url(#${id}-${texture})`;
