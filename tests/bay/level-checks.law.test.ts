import { describe, expect, test } from "vitest";
import { quart } from "../../src/bay/bands.ts";
import { levelChecks, stickIdling } from "../../src/bay/level-checks.ts";
import { HOT, idling } from "../../src/bay/ready.ts";
import { density } from "../../src/physics/fluid/density.ts";
import { returnTime } from "../../src/physics/sump/holdup.ts";
import { builds, van } from "./van.ts";

const shortages = [-1, 0, 1, 2, 3];

describe.each(builds)("the level of the $build.name", (unit) => {
  const looks = shortages.map((quarts) => levelChecks(unit, quarts * quart));

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
    // The taxi's small converter lets less run back.
    expect(looks[2]!.stickStood.position).toBeGreaterThan(unit === van ? 0.9 : 0.5);
  });

  test("falls with every quart, on the stick and over the lip", () => {
    for (let i = 1; i < looks.length; i++) {
      expect(looks[i]!.stick.depth).toBeLessThan(looks[i - 1]!.stick.depth);
      expect(looks[i]!.overLip).toBeLessThan(looks[i - 1]!.overLip);
    }
  });

  test("takes, at the plug, a further quart for each that is missing, shrunk to 40 °C", () => {
    const shrunk = (density(unit.fluid.density15, HOT) / density(unit.fluid.density15, 313.15)) * quart;
    expect(looks[3]!.added - looks[2]!.added).toBeCloseTo(shrunk, 9);
    // Three quarts low the taxi's pump draws air at idle: less is thrown about, so more of it stands in the pan.
    const third = looks[4]!.added - looks[3]!.added;
    if (unit === van) expect(third).toBeCloseTo(shrunk, 9);
    else expect(third).toBeLessThan(shrunk);
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
    const depths = [273.15, 293.15, 313.15, 333.15, 353.15, 373.15].map((t) => stickIdling(unit, 0, t).depth);
    expect([...depths].sort((a, b) => a - b)).toEqual(depths);
  });
});

describe.each(builds)("the $build.name made ready", (unit) => {
  test("has as much in flight as what comes back in its return time", () => {
    const { state, now } = idling(unit, 0, HOT);
    const { hotReturnTime, hotViscosity, returnExponent } = unit.build.holdUp;
    const back = returnTime(hotReturnTime, now.viscosity, hotViscosity, returnExponent);
    const thrownOff = (now.line.clutchFlow + now.line.feed - now.line.relief) * (1 - now.line.lineGas);
    expect(state.inFlight).toBeCloseTo(thrownOff * back, 7);
    expect(now.temperature).toBeCloseTo(HOT, 9);
  });

  test("cannot lack its whole fill, nor an unknown amount", () => {
    expect(() => idling(unit, unit.build.fill, HOT)).toThrow(/shortage/);
    expect(() => idling(unit, Number.NaN, HOT)).toThrow(/shortage/);
  });
});
