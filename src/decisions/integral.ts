// Integrals of smooth functions, to about a dozen digits: panels are halved where the rule is least sure.
import { impossible } from "../errors.ts";

// The rule of Gauss with 7 nodes and Kronrod's with 15, which has the same nodes among its own: from the middle outwards.
const nodes = [
  0, 0.20778495500789847, 0.4058451513773972, 0.5860872354676911, 0.7415311855993945, 0.8648644233597691,
  0.9491079123427585, 0.9914553711208126,
];
const kronrod = [
  0.20948214108472782, 0.20443294007529889, 0.19035057806478542, 0.1690047266392679, 0.14065325971552592,
  0.10479001032225019, 0.06309209262997856, 0.022935322010529224,
];
/** Of every second node. */
const gauss = [0.4179591836734694, 0.3818300505051189, 0.27970539148927664, 0.1294849661688697];

const SURE = 1e-13;
const MOST = 2000;

interface Panel {
  readonly from: number;
  readonly to: number;
  readonly value: number;
  /** How far the two rules are apart: much more than Kronrod's own error. */
  readonly doubt: number;
}

function panelOf(f: (x: number) => number, from: number, to: number): Panel {
  const half = 0.5 * (to - from);
  const middle = from + half;
  let [fine, coarse] = [0, 0];
  for (let i = 0; i < nodes.length; i++) {
    const reach = half * nodes[i]!;
    const sum = i === 0 ? f(middle) : f(middle - reach) + f(middle + reach);
    fine += kronrod[i]! * sum;
    if (i % 2 === 0) coarse += gauss[i / 2]! * sum;
  }
  return { from, to, value: half * fine, doubt: half * Math.abs(fine - coarse) };
}

/**
 * Integral of f from one place to another, both finite, begun with so many equal panels. It is right to about 1e-13 of what it
 * adds up to where f is smooth. Kinks and jumps are closed in on, unless they lie beyond the outermost nodes of a panel, a 500th of
 * it: what is known by jumps is better summed than integrated. `floor`: an error that does not count, where f itself is known no
 * better. Errors: f is not finite somewhere.
 * Source: Kronrod (1965); nodes and weights as in Piessens and others, QUADPACK (1983), recalled, and tested on powers.
 */
export function integral(f: (x: number) => number, from: number, to: number, panels = 1, floor = 0): number {
  const list = Array.from({ length: panels }, (_, i) =>
    panelOf(f, from + ((to - from) * i) / panels, from + ((to - from) * (i + 1)) / panels),
  );
  for (;;) {
    let [size, doubt, worst] = [0, 0, 0];
    for (let i = 0; i < list.length; i++) {
      size += Math.abs(list[i]!.value);
      doubt += list[i]!.doubt;
      if (list[i]!.doubt > list[worst]!.doubt) worst = i;
    }
    if (!(size < Infinity)) impossible("integrand", size, "a finite number everywhere");
    const { from: left, to: right } = list[worst]!;
    const middle = 0.5 * (left + right);
    if (doubt <= Math.max(SURE * size, floor) || list.length >= MOST || !(left < middle && middle < right))
      break;
    list[worst] = panelOf(f, left, middle);
    list.push(panelOf(f, middle, right));
  }
  // Small ones first, so that none is lost beside the large.
  return list
    .map(({ value }) => value)
    .sort((a, b) => Math.abs(a) - Math.abs(b))
    .reduce((sum, value) => sum + value, 0);
}

/** How many times e the logarithm goes down: what lies below adds nothing to seventeen digits. */
const DEEP = 40;

/**
 * Integral of f from 0 to a place, where f goes as x^(power − 1) near 0, with a power above 0, and has its features on any
 * scale: taken over the logarithm of x, which sees them all and makes f smooth at 0. `features` below 1 are told where the
 * scale that counts lies far below the end, as a share of it.
 */
export function integralFromZero(
  f: (x: number) => number,
  to: number,
  power = 1,
  features = 1,
  floor = 0,
): number {
  if (to === 0) return 0;
  const depth = DEEP / power - Math.log(features);
  const panels = Math.max(8, Math.min(64, Math.ceil(depth / 8)));
  return integral(
    (s) => {
      const x = to * Math.exp(-s);
      const value = x === 0 ? 0 : f(x);
      return value === 0 ? 0 : x * value;
    },
    0,
    depth,
    panels,
    floor,
  );
}
