export interface QuadratureNodes {
  readonly at: Float64Array;
  readonly weight: Float64Array;
}

/**
 * Nodes and weights with which Σ weight·f(at) is ∫f from `from` to `to`, exact for polynomials up to degree 2n − 1.
 * Newton's method on the Legendre polynomial (Abramowitz & Stegun 25.4.29 and 25.4.30).
 *
 * @param count Number of nodes, 1 or more. Never throws. Cost count².
 */
export function gaussLegendre(count: number, from: number, to: number): QuadratureNodes {
  const at = new Float64Array(count);
  const weight = new Float64Array(count);
  const half = (to - from) / 2;
  for (let i = 0; i < count; i++) {
    let root = -Math.cos((Math.PI * (i + 0.75)) / (count + 0.5)); // close enough for Newton to find the i-th root
    let slope = 0;
    for (let round = 0; round < 20; round++) {
      const [value, previous] = legendre(count, root);
      slope = (count * (root * value - previous)) / (root * root - 1);
      const step = value / slope;
      root -= step;
      if (Math.abs(step) < 1e-15) break;
    }
    at[i] = from + half * (1 + root);
    weight[i] = (2 * half) / ((1 - root * root) * slope * slope);
  }
  return { at, weight };
}

/** The Legendre polynomials of this degree and the one below, at x. */
function legendre(degree: number, x: number): [number, number] {
  let previous = 1;
  let value = x;
  for (let k = 2; k <= degree; k++) {
    [previous, value] = [value, ((2 * k - 1) * x * value - (k - 1) * previous) / k];
  }
  return [value, previous];
}
