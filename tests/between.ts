// Numbers for properties, spread evenly. fc.double is even over the bit patterns of numbers, so nearly all that it draws from
// 0 to 1 lies close to 0; it keeps a share here, for the edges that it finds.

import fc from "fast-check";

/** Numbers from `low` to `high`, evenly, and now and then an edge. */
export function between(low: number, high: number): fc.Arbitrary<number> {
  const even = fc.integer({ min: 0, max: 1_000_000 }).map((i) => low + ((high - low) * i) / 1_000_000);
  return fc.oneof(
    { weight: 5, arbitrary: even },
    { weight: 1, arbitrary: fc.double({ min: low, max: high, noNaN: true }) },
  );
}

/** Powers of ten with exponents from `low` to `high`, evenly over the decades. */
export function decades(low: number, high: number): fc.Arbitrary<number> {
  return between(low, high).map((exponent) => 10 ** exponent);
}
