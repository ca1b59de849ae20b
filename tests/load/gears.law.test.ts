import fc from "fast-check";
import { describe, expect, test } from "vitest";
import {
  appliedElements,
  elementShare,
  frontRatio,
  gearRatio,
  holdingElements,
  rearRatio,
  slidingSpeed,
  type GearNumber,
  type GearTrain,
} from "../../src/physics/load/gears.ts";
import {
  assemblyFaults,
  checkDualSun,
  directRatio,
  overdriveRatio,
  planetTeeth,
  reverseRatio,
  ringHeldRatio,
  sunHeldRatio,
} from "../../src/physics/load/planetary.ts";
import { vanTrain } from "../../src/physics/load/van-train.ts";

const gears: readonly GearNumber[] = [-1, 1, 2, 3, 4, 5];
const gear = fc.constantFrom(...gears);
const train: fc.Arbitrary<GearTrain> = fc.record({
  front: fc.record({ sun: fc.integer({ min: 20, max: 50 }), ring: fc.integer({ min: 60, max: 110 }) }),
  rear: fc.record({
    smallSun: fc.integer({ min: 20, max: 30 }),
    largeSun: fc.integer({ min: 31, max: 45 }),
    ring: fc.integer({ min: 70, max: 110 }),
  }),
});

/**
 * The kinematics written out afresh, by Willis's equations: speeds of the six members when the turbine and the output
 * turn as given and two of a gear's three elements hold. Returns the sliding speed of the third.
 */
function slidingByWillis(
  { front, rear }: GearTrain,
  g: GearNumber,
  loose: string,
  turbine: number,
  output: number,
) {
  // Front: Zs ws + Zr wr = (Zs + Zr) wc, ring driven by the turbine.
  const held = (name: string) => name !== loose && appliedElements(g).includes(name as never);
  // Rear with output = ring: ws1 = wc + Zr/Zs1 (wr - wc), ws2 = wc - Zr/Zs2 (wr - wc).
  const rearSuns = (wc: number) => ({
    small: wc + (rear.ring / rear.smallSun) * (output - wc),
    large: wc - (rear.ring / rear.largeSun) * (output - wc),
  });
  const carrierForLarge = (ws2: number) =>
    (ws2 + (rear.ring / rear.largeSun) * output) / (1 + rear.ring / rear.largeSun);
  const carrierForSmall = (ws1: number) =>
    (ws1 - (rear.ring / rear.smallSun) * output) / (1 - rear.ring / rear.smallSun);
  const sunOfFront = (wc: number) => ((front.sun + front.ring) * wc - front.ring * turbine) / front.sun;

  // Speed of the front carrier, from the front set when its own element holds, else from the rear set.
  let between: number | undefined;
  if (held("front clutch")) between = turbine;
  if (held("front brake")) between = (front.ring * turbine) / (front.sun + front.ring);
  let rearCarrier: number | undefined;
  if (held("low-reverse brake")) rearCarrier = 0;
  if (held("band brake")) rearCarrier = carrierForLarge(0);
  if (rearCarrier === undefined && between !== undefined) {
    if (held("direct clutch")) rearCarrier = between;
    else if (held("forward clutch")) rearCarrier = carrierForSmall(between);
    else if (held("reverse clutch")) rearCarrier = carrierForLarge(between);
  }
  if (rearCarrier === undefined) {
    // The front element is loose: small sun and carrier are joined, so the rear set turns as one.
    rearCarrier = output;
  }
  const suns = rearSuns(rearCarrier);
  if (between === undefined)
    between = held("forward clutch") ? suns.small : held("direct clutch") ? rearCarrier : suns.large;
  switch (loose) {
    case "front brake":
      return sunOfFront(between);
    case "front clutch":
      return turbine - sunOfFront(between);
    case "forward clutch":
      return between - suns.small;
    case "direct clutch":
      return between - rearCarrier;
    case "reverse clutch":
      return between - suns.large;
    case "band brake":
      return suns.large;
    default:
      return rearCarrier;
  }
}

describe("planetary sets", () => {
  const set = fc.record({ sun: fc.integer({ min: 15, max: 60 }), ring: fc.integer({ min: 61, max: 130 }) });

  test("obey Willis: with one member held the ratios of a set are bound to one another", () => {
    fc.assert(
      fc.property(set, (teeth) => {
        expect(ringHeldRatio(teeth)).toBeCloseTo(1 - reverseRatio(teeth), 12);
        expect(sunHeldRatio(teeth)).toBeCloseTo(1 - 1 / reverseRatio(teeth), 12);
        expect(sunHeldRatio(teeth) * overdriveRatio(teeth)).toBeCloseTo(directRatio, 12);
        expect(1 / ringHeldRatio(teeth) + 1 / sunHeldRatio(teeth)).toBeCloseTo(1, 12);
      }),
    );
  });

  test("refuse teeth that no gear has", () => {
    for (const sun of [0, -3, NaN, Infinity]) expect(() => sunHeldRatio({ sun, ring: 70 })).toThrow(/sun/);
    const broken = { ...vanTrain, rear: { ...vanTrain.rear, largeSun: NaN } };
    for (const g of [-1, 1, 2, 3, 5] as const) expect(() => gearRatio(broken, g)).toThrow(/largeSun/);
  });

  test("the van's sets assemble, and faults are all named", () => {
    expect(assemblyFaults("front", vanTrain.front, 4)).toEqual([]);
    expect(planetTeeth(vanTrain.front)).toBe(14);
    expect(() => checkDualSun("rear", vanTrain.rear, 4)).not.toThrow();
    expect(assemblyFaults("front", { sun: 42, ring: 71 }, 3).map(({ path }) => path)).toEqual([
      "front.ring",
      "front.planets",
    ]);
    expect(assemblyFaults("front", { sun: 4.5, ring: 3 }, 1)).toHaveLength(3);
    expect(() => checkDualSun("rear", { smallSun: 40, largeSun: 38, ring: 79 }, 4)).toThrow(
      /rear\.ring[\s\S]*rear\.smallSun/,
    );
  });
});

describe("gear train", () => {
  test("the van's ratios are those of its tooth counts", () => {
    const expected = {
      1: 1.6 * 2.6,
      2: 1.6 * 1.5241379,
      3: 1.5241379,
      4: 1,
      5: 0.6724138,
      [-1]: -1.6 * 2.0526316,
    };
    for (const g of gears) expect(gearRatio(vanTrain, g)).toBeCloseTo(expected[g], 6);
    expect(() => gearRatio(vanTrain, 6 as never)).toThrow(/gear/);
  });

  test("torque balances: what the brakes take is what the output has more than the input", () => {
    fc.assert(
      fc.property(train, gear, (t, g) => {
        const front = elementShare(t, g, "front brake");
        const rear = elementShare(t, g, "band brake") + elementShare(t, g, "low-reverse brake");
        const rearSign = Math.sign(rearRatio(t, g) - 1);
        expect(1 + front + rearSign * rear).toBeCloseTo(gearRatio(t, g), 10);
      }),
    );
  });

  test("everything that enters the rear set goes through its clutches", () => {
    fc.assert(
      fc.property(train, gear, (t, g) => {
        const through = (["forward clutch", "direct clutch", "reverse clutch"] as const).reduce(
          (sum, element) => sum + elementShare(t, g, element),
          0,
        );
        expect(through).toBeCloseTo(frontRatio(t, g), 10);
      }),
    );
  });

  test("each gear holds three elements with a share, the others carry nothing", () => {
    for (const g of gears) {
      const carrying = holdingElements.filter((element) => elementShare(vanTrain, g, element) > 0);
      expect([...carrying].sort()).toEqual([...appliedElements(g)].sort());
    }
  });

  test("sliding speeds are those of the members, written out by Willis's equations", () => {
    const w = fc.double({ min: 1, max: 600, noNaN: true });
    fc.assert(
      fc.property(train, gear, w, w, (t, g, turbine, output) => {
        for (const element of appliedElements(g)) {
          const sliding = slidingSpeed(t, g, element, turbine, output);
          expect(Math.abs(sliding)).toBeCloseTo(Math.abs(slidingByWillis(t, g, element, turbine, output)), 6);
        }
      }),
    );
  });

  test("an element that is not applied has no sliding speed of its own making", () => {
    expect(slidingSpeed(vanTrain, 4, "band brake", 200, 100)).toBe(0);
  });
});
