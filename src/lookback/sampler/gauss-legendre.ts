// Nodes and weights of Gauss and Legendre: the points at which a smooth function must be known for its integral.

/** Nodes from -1 to 1 and their weights, which add up to 2. */
export interface Rule {
  readonly nodes: Float64Array;
  readonly weights: Float64Array;
}

/**
 * The rule with n nodes, exact for polynomials up to degree 2n - 1; n is 1 or more. Roots of Legendre's polynomial by Newton's steps.
 * Source: Abramowitz and Stegun, Handbook of Mathematical Functions, 1964, 25.4.29 (recalled).
 */
export function gaussLegendre(n: number): Rule {
  const nodes = new Float64Array(n);
  const weights = new Float64Array(n);
  for (let i = 0; i < n; i++) {
    let x = -Math.cos((Math.PI * (i + 0.75)) / (n + 0.5));
    let slope = 1;
    for (let k = 0; k < 100; k++) {
      let [before, now] = [1, x];
      for (let j = 2; j <= n; j++) [before, now] = [now, ((2 * j - 1) * x * now - (j - 1) * before) / j];
      slope = (n * (x * now - before)) / (x * x - 1);
      const step = now / slope;
      x -= step;
      if (Math.abs(step) < 1e-15) break;
    }
    nodes[i] = x;
    weights[i] = 2 / ((1 - x * x) * slope * slope);
  }
  return { nodes, weights };
}
