// One root of a continuous function between two places where its sign differs.

/**
 * The place x between `low` and `high` at which f(x, data) changes sign. Inverse quadratic steps where they
 * are safe (Chandrupatla, Adv. Eng. Softw. 28, 1997, 145), halving where they are not and whenever three
 * steps have not halved the bracket, so that it ends for every continuous f. f must not be of one sign at
 * both ends: then the nearer end is given. `data` is handed through, so that no closure has to be made.
 */
export function rootBetween<T>(
  f: (x: number, data: T) => number,
  data: T,
  low: number,
  high: number,
): number {
  let b = low;
  let fb = f(b, data);
  if (fb === 0) return b;
  let a = high;
  let fa = f(a, data);
  if (fa === 0) return a;
  if (fa > 0 === fb > 0) return Math.abs(fa) < Math.abs(fb) ? a : b;
  let share = 0.5;
  let slow = 0;
  let width = Math.abs(a - b);
  for (;;) {
    let x = a + share * (b - a);
    // A step beside an end many decades larger than the root rounds onto that end; halving goes on until no
    // number lies between.
    if (x === a || x === b) x = a + 0.5 * (b - a);
    if (x === a || x === b) return Math.abs(fa) < Math.abs(fb) ? a : b;
    const fx = f(x, data);
    let c: number;
    let fc: number;
    if (fx > 0 === fa > 0) {
      c = a;
      fc = fa;
    } else {
      c = b;
      fc = fb;
      b = a;
      fb = fa;
    }
    a = x;
    fa = fx;
    const best = Math.abs(fa) < Math.abs(fb) ? a : b;
    const gap = Math.abs(b - a);
    const tolerance = 4e-16 * Math.abs(best);
    if (fx === 0) return x;
    if (gap <= 2 * tolerance) return best;
    if (gap <= 0.5 * width) {
      width = gap;
      slow = 0;
    } else slow++;
    const xi = (a - b) / (c - b);
    const phi = (fa - fb) / (fc - fb);
    share =
      slow < 3 && phi * phi < xi && (1 - phi) * (1 - phi) < 1 - xi
        ? (fa / (fb - fa)) * (fc / (fb - fc)) + ((c - a) / (b - a)) * (fa / (fc - fa)) * (fb / (fc - fb))
        : 0.5;
    const least = tolerance / gap;
    // Also turns a step that is no number into a halving.
    if (!(share >= least)) share = share < least ? least : 0.5;
    else if (share > 1 - least) share = 1 - least;
  }
}
