import { codedError, impossible, type Fault } from "../../errors.ts";

/** Tooth counts of a simple planetary set: sun inside, ring outside, planets on a carrier between. */
export interface PlanetarySet {
  readonly sun: number;
  readonly ring: number;
}

/** Tooth counts of a set with two suns, one ring and one carrier with long and short planets. */
export interface DualSunSet {
  readonly smallSun: number;
  readonly largeSun: number;
  readonly ring: number;
}

// Ratios are input speed over output speed, as in the trade; negative turns backwards. Teeth are counts above zero,
// else the functions throw; whether a set can be assembled is for `assemblyFaults` to say.
// From Willis: (ws - wc)/(wr - wc) = -Zr/Zs, and +Zr/Zs through a pair of planets (Müller, Die Umlaufgetriebe, 1971).

function check(field: string, teeth: number): void {
  if (!(teeth > 0 && teeth < Infinity)) impossible(field, teeth, "a number of teeth above 0");
}
/** Refuses a set whose teeth are no counts. */
export function checkSet(set: PlanetarySet): PlanetarySet {
  check("sun", set.sun);
  check("ring", set.ring);
  return set;
}
/** Refuses a set whose teeth are no counts. */
export function checkDual(set: DualSunSet): DualSunSet {
  check("smallSun", set.smallSun);
  check("largeSun", set.largeSun);
  check("ring", set.ring);
  return set;
}

/** Ring held, sun in, carrier out: the large reduction, 1 + Zr/Zs. */
export function ringHeldRatio(set: PlanetarySet): number {
  const { sun, ring } = checkSet(set);
  return 1 + ring / sun;
}
/** Sun held, ring in, carrier out: the small reduction, 1 + Zs/Zr. */
export function sunHeldRatio(set: PlanetarySet): number {
  const { sun, ring } = checkSet(set);
  return 1 + sun / ring;
}
/** Sun held, carrier in, ring out: overdrive, Zr/(Zr + Zs). */
export function overdriveRatio(set: PlanetarySet): number {
  const { sun, ring } = checkSet(set);
  return ring / (ring + sun);
}
/** Carrier held, sun in, ring out: reverse, -Zr/Zs. */
export function reverseRatio(set: PlanetarySet): number {
  const { sun, ring } = checkSet(set);
  return -ring / sun;
}
/** Any two members joined: the set turns as one. */
export const directRatio = 1;

/** Small sun in, carrier held, ring out: Zr/Zs1. */
export function dualFirstRatio(set: DualSunSet): number {
  const { smallSun, ring } = checkDual(set);
  return ring / smallSun;
}
/** Small sun in, large sun held, ring out: Zr (Zs1 + Zs2)/(Zs1 (Zr + Zs2)). */
export function dualSecondRatio(set: DualSunSet): number {
  const { smallSun, largeSun, ring } = checkDual(set);
  return (ring * (smallSun + largeSun)) / (smallSun * (ring + largeSun));
}
/** Carrier in, large sun held, ring out: Zr/(Zr + Zs2). */
export function dualOverdriveRatio(set: DualSunSet): number {
  const { largeSun, ring } = checkDual(set);
  return ring / (ring + largeSun);
}
/** Large sun in, carrier held, ring out: -Zr/Zs2. */
export function dualReverseRatio(set: DualSunSet): number {
  const { largeSun, ring } = checkDual(set);
  return -ring / largeSun;
}

/** Teeth of each planet between a sun and the ring, from Zs + 2 Zp = Zr; a whole number when the set can be built. */
export function planetTeeth(set: PlanetarySet): number {
  const { sun, ring } = checkSet(set);
  return (ring - sun) / 2;
}

/**
 * Why a set with `planets` equally spaced planets cannot be assembled: every fault, none when it can.
 * Rules: whole tooth counts, Zs + 2 Zp = Zr, and (Zs + Zr)/planets whole (equal spacing).
 */
export function assemblyFaults(path: string, set: PlanetarySet, planets: number): Fault[] {
  const faults: Fault[] = [];
  const want = (good: boolean, field: string, expected: string, given: number, example: string) => {
    if (!good) faults.push({ path: `${path}.${field}`, expected, given: String(given), example });
  };
  const whole = (teeth: number) => Number.isInteger(teeth) && teeth >= 8;
  want(whole(set.sun), "sun", "a whole number of teeth, 8 or more", set.sun, "42");
  want(
    whole(set.ring) && set.ring > set.sun,
    "ring",
    "a whole number of teeth, more than the sun's",
    set.ring,
    "70",
  );
  want(Number.isInteger(planets) && planets >= 2, "planets", "a whole number, 2 or more", planets, "4");
  if (faults.length > 0) return faults;
  want(
    Number.isInteger(planetTeeth(set)),
    "ring",
    "as odd or even as the sun, for Zs + 2 Zp = Zr",
    set.ring,
    "",
  );
  want(
    Number.isInteger((set.sun + set.ring) / planets),
    "planets",
    "a number that divides the teeth of sun and ring together",
    planets,
    "",
  );
  return faults;
}

/** Throws `impossible-input` with every fault when a two-sun set cannot be built: its suns, then its long planets. */
export function checkDualSun(path: string, set: DualSunSet, planets: number): void {
  const faults = assemblyFaults(path, { sun: set.largeSun, ring: set.ring }, planets);
  if (!(Number.isInteger(set.smallSun) && set.smallSun >= 8 && set.smallSun < set.largeSun))
    faults.push({
      path: `${path}.smallSun`,
      expected: "a whole number of teeth, 8 or more, fewer than the large sun's",
      given: String(set.smallSun),
      example: "30",
    });
  if (faults.length > 0) throw codedError("impossible-input", faults);
}
