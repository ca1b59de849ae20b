// Random numbers that hang on nothing but the whole numbers given: whoever draws them, in whatever order, draws the same.

/**
 * Numbers from 0 to below 1 that depend on nothing but the whole numbers given: a counter through a mixer of bits.
 * Source: Steele, Lea and Flood, Fast splittable pseudorandom number generators, 2014; 32-bit mixer of Appleby, 2008 (recalled).
 */
export function randomBits(...keys: readonly number[]): () => number {
  let state = keys.reduce((before, key) => mixed((before ^ mixed(key | 0)) + 0x9e3779b9), 0x2545f491);
  return () => {
    state = (state + 0x9e3779b9) | 0;
    return (mixed(state) >>> 0) / 2 ** 32;
  };
}

function mixed(bits: number): number {
  let h = bits | 0;
  h = Math.imul(h ^ (h >>> 16), 0x85ebca6b);
  h = Math.imul(h ^ (h >>> 13), 0xc2b2ae35);
  return h ^ (h >>> 16);
}

/** The whole numbers below n in a random order (Fisher and Yates). */
export function shuffled(n: number, random: () => number): Uint32Array {
  const order = Uint32Array.from({ length: n }, (_, i) => i);
  for (let i = n - 1; i > 0; i--) {
    const k = Math.floor(random() * (i + 1));
    [order[i], order[k]] = [order[k]!, order[i]!];
  }
  return order;
}
