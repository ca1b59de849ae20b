// How draws spread and lean on one another, as the triangle that turns independent numbers into steps of that spread.

/** Lower triangle L with LLᵀ the covariance of weighted rows, row by row; unknowns that do not vary get nothing. */
export function spreadTriangle(
  points: Float64Array,
  weights: Float64Array,
  dimensions: number,
): Float64Array {
  const count = weights.length;
  const mean = new Float64Array(dimensions);
  for (let i = 0; i < count; i++)
    for (let j = 0; j < dimensions; j++) mean[j]! += weights[i]! * points[i * dimensions + j]!;
  const spread = new Float64Array(dimensions * dimensions);
  for (let i = 0; i < count; i++)
    for (let j = 0; j < dimensions; j++) {
      const off = weights[i]! * (points[i * dimensions + j]! - mean[j]!);
      for (let k = 0; k <= j; k++)
        spread[j * dimensions + k]! += off * (points[i * dimensions + k]! - mean[k]!);
    }
  return triangle(spread, dimensions);
}

/** Cholesky's triangle of a covariance, in place; what rounding makes negative counts as nothing. */
function triangle(a: Float64Array, n: number): Float64Array {
  for (let j = 0; j < n; j++) {
    for (let k = 0; k < j; k++) {
      let sum = a[j * n + k]!;
      for (let l = 0; l < k; l++) sum -= a[j * n + l]! * a[k * n + l]!;
      a[j * n + k] = a[k * n + k]! > 0 ? sum / a[k * n + k]! : 0;
    }
    let left = a[j * n + j]!;
    for (let l = 0; l < j; l++) left -= a[j * n + l]! * a[j * n + l]!;
    a[j * n + j] = Math.sqrt(Math.max(0, left));
    for (let k = j + 1; k < n; k++) a[j * n + k] = 0;
  }
  return a;
}
