import { describe, expect, test } from "vitest";
import { quart } from "../../src/bay/bands.ts";
import { levelChecks, stickIdling } from "../../src/bay/level-checks.ts";
import { HOT, idling } from "../../src/bay/ready.ts";
import { density } from "../../src/physics/fluid/density.ts";
import { returnTime } from "../../src/physics/sump/holdup.ts";
import { van } from "./van.ts";

const shortages = [-1, 0, 1, 2, 3];
const looks = shortages.map((quarts) => levelChecks(van, quarts * quart));

describe("the level", () => {
  test.each(shortages.map((quarts, i) => [quarts, looks[i]!] as const))(
    "with %s qt missing reads low when cold and high after a night's stand",
    (_, { stick, stickCold, stickStood }) => {
      expect(stickCold.position).toBeLessThan(stick.position);
      expect(stickStood.position).toBeGreaterThan(stick.position);
    },
  );

  test("of a correct fill reads below low when cold, and of one a quart short full after a night", () => {
    expect(looks[1]!.stickCold.position).toBeLessThan(0);
    expect(looks[2]!.stick.position).toBeLessThan(0);
    expect(looks[2]!.stickStood.position).toBeGreaterThan(0.9);
  });

  test("falls with every quart, on the stick and over the lip", () => {
    for (let i = 1; i < looks.length; i++) {
      expect(looks[i]!.stick.depth).toBeLessThan(looks[i - 1]!.stick.depth);
      expect(looks[i]!.overLip).toBeLessThan(looks[i - 1]!.overLip);
    }
  });

  test("takes, at the plug, a further quart for each that is missing, shrunk to 40 °C", () => {
    const shrunk = (density(van.fluid.density15, HOT) / density(van.fluid.density15, 313.15)) * quart;
    expect(looks[3]!.added - looks[2]!.added).toBeCloseTo(shrunk, 9);
    expect(looks[4]!.added - looks[3]!.added).toBeCloseTo(shrunk, 9);
  });

  test("runs from the plug exactly when it stands over the lip, and then nothing has to be added", () => {
    for (const { runs, overLip, added } of looks) {
      expect(runs).toBe(overLip > 0);
      expect(added > 0).toBe(!runs);
    }
  });

  test("reaches the lip warmer the less there is, and in the end not at all", () => {
    const from = looks.map(({ runsFrom }) => runsFrom ?? Infinity);
    expect([...from].sort((a, b) => a - b)).toEqual(from);
    expect(from.at(-1)).toBe(Infinity);
  });

  test("rises with temperature", () => {
    const depths = [273.15, 293.15, 313.15, 333.15, 353.15, 373.15].map((t) => stickIdling(van, 0, t).depth);
    expect([...depths].sort((a, b) => a - b)).toEqual(depths);
  });
});

describe("a unit made ready", () => {
  test("has as much in flight as what comes back in its return time", () => {
    const { state, now } = idling(van, 0, HOT);
    const { hotReturnTime, hotViscosity, returnExponent } = van.build.holdUp;
    const back = returnTime(hotReturnTime, now.viscosity, hotViscosity, returnExponent);
    const thrownOff = (now.line.clutchFlow + now.line.feed - now.line.relief) * (1 - now.line.lineGas);
    expect(state.inFlight).toBeCloseTo(thrownOff * back, 7);
    expect(now.temperature).toBeCloseTo(HOT, 9);
  });

  test("cannot lack its whole fill, nor an unknown amount", () => {
    expect(() => idling(van, van.build.fill, HOT)).toThrow(/shortage/);
    expect(() => idling(van, Number.NaN, HOT)).toThrow(/shortage/);
  });
});
