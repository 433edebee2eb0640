import type { Chain } from '../../letters/glyph.ts';
import type { Random } from '../../letters/random.ts';

/** A smooth displacement of the plane, mm for mm: the same letter never comes out twice the same. */
export type Field = (x: number, y: number) => { dx: number; dy: number };

interface Wave {
  kx: number;
  ky: number;
  phaseX: number;
  phaseY: number;
}

/**
 * A random smooth field made of a few plane waves.
 * @param amplitudeMm root mean square of the displacement in each direction
 * @param lengthMm typical wavelength
 */
export function smoothField(random: Random, amplitudeMm: number, lengthMm: number): Field {
  if (amplitudeMm === 0) return () => ({ dx: 0, dy: 0 });
  const count = 7;
  const waves: Wave[] = Array.from({ length: count }, () => {
    const direction = random.between(0, 2 * Math.PI);
    const k = (2 * Math.PI) / (lengthMm * random.between(0.7, 1.5));
    return {
      kx: k * Math.cos(direction),
      ky: k * Math.sin(direction),
      phaseX: random.between(0, 2 * Math.PI),
      phaseY: random.between(0, 2 * Math.PI),
    };
  });
  const each = amplitudeMm * Math.sqrt(2 / count);
  return (x, y) => {
    let dx = 0;
    let dy = 0;
    for (const { kx, ky, phaseX, phaseY } of waves) {
      const at = kx * x + ky * y;
      dx += Math.sin(at + phaseX);
      dy += Math.sin(at + phaseY);
    }
    return { dx: each * dx, dy: each * dy };
  };
}

/**
 * Tremor: a wave that runs along the writing, its strength swelling and fading. Strokes that go up and down are shaken
 * sideways, strokes along the line up and down; the pen's two edges move together, so the stroke keeps its width.
 */
export function tremorField(random: Random, amplitudeMm: number, wavesPerMm: number): Field {
  if (amplitudeMm === 0) return () => ({ dx: 0, dy: 0 });
  const [a, b, c] = [random.between(0, 6.28), random.between(0, 6.28), random.between(0, 6.28)];
  const k = 2 * Math.PI * wavesPerMm;
  return (x, y) => {
    const swell = 0.65 + 0.35 * Math.sin(0.31 * x + c) * Math.sin(0.23 * x + 0.9 * y + a);
    // Slow drifts of the phase keep the wave from looking printed.
    const drift = 1.3 * Math.sin(0.47 * x + b) + 1.1 * Math.sin(0.71 * y + a);
    return {
      dx: amplitudeMm * swell * Math.sin(k * (0.92 * y + 0.24 * x) + a + drift),
      dy: amplitudeMm * swell * Math.sin(k * (0.88 * x + 0.17 * y) + b + drift),
    };
  };
}

/** Adds points so that no piece is longer than `pieceMm`: only then do straight strokes bend with a field. */
export function subdivided(chain: Chain, pieceMm: number): Chain {
  const out: number[] = [];
  const count = chain.length / 2;
  for (let i = 0; i < count; i += 1) {
    const [x0, y0] = [chain[2 * i] as number, chain[2 * i + 1] as number];
    const next = (i + 1) % count;
    const [x1, y1] = [chain[2 * next] as number, chain[2 * next + 1] as number];
    const pieces = Math.max(1, Math.ceil(Math.hypot(x1 - x0, y1 - y0) / pieceMm));
    for (let p = 0; p < pieces; p += 1) out.push(x0 + ((x1 - x0) * p) / pieces, y0 + ((y1 - y0) * p) / pieces);
  }
  return Float64Array.from(out);
}
