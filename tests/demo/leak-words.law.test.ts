// The report tells every kind of leak and every place in words, with its sizes in the reader's units.
import { describe, expect, it } from "vitest";
import { withOther } from "../../demos/report/said.ts";
import { leakText } from "../../demos/report/leak-words.ts";
import type { LeakOpening, LeakPlace } from "../../src/physics/build.ts";
import { leaking, shipped } from "../emerge/van.ts";

const openings: readonly (readonly [LeakOpening, RegExp])[] = [
  [{ kind: "hole", diameter: 0.4e-3, wall: 0.9e-3 }, /hole of 0\.4 mm .* wall of 0\.9 mm/],
  [
    { kind: "slot", length: 0.03, gap: 0.12e-3, depth: 0.01 },
    /gap 30 mm .*long, 0\.12 mm .*high and 10 mm .*deep/,
  ],
  [
    { kind: "pit", diameter: 0.5e-3, after: 30 * 86400, exponent: 0.523, wall: 0.7e-3, bore: 6e-3 },
    /pit .*0\.7 mm.*0\.5 mm.*30 days.*calendar.*0\.523.*6 mm/,
  ],
  [
    {
      kind: "pit",
      diameter: 0.5e-3,
      after: 30 * 86400,
      exponent: 0.523,
      wall: 0.7e-3,
      bore: 6e-3,
      aspect: 1,
    },
    /pit .*0\.5 mm.*30 days.*calendar.*cut by the wall.*deepens.*0\.523.*6 mm/,
  ],
  [
    { kind: "rub", tubeRadius: 5e-3, wall: 0.9e-3, contact: 8e-3, depthInHundredHours: 0.2e-3 },
    /flat of 8 mm.*0\.9 mm.*10 mm.*0\.2 mm/,
  ],
];
const places: readonly (readonly [LeakPlace, RegExp])[] = [
  ["supply-line", /to the cooler/],
  ["return-line", /return line/],
  ["pan", /in the pan/],
  ["pan-seam", /rail of the pan.*100 mm .*from the rear and 50 mm .*from the right/],
  ["shaft-seal", /seal of a shaft, fed by the lubrication/],
];

describe("a leak in words", () => {
  it.each(openings)("tells its kind and sizes: $kind", (opening, says) => {
    expect(leakText(leaking("supply-line", opening), withOther("SI"))).toMatch(says);
    expect(leakText(leaking("supply-line", opening), withOther("US"))).toMatch(/ in \(/);
  });

  it.each(places)("tells where it is: %s", (place, says) => {
    expect(leakText(leaking(place, openings[0]![0], { x: 0.1, y: 0.05 }), withOther("SI"))).toMatch(says);
  });

  it("tells what hides it, of the shipped cases too, and says nothing of a tight unit", () => {
    for (const name of ["demo", "slow-seep", "parting-crack", "pinhole", "taxi-pit", "taxi-shaft-seal"]) {
      const text = leakText(shipped(name).unit.leak!, withOther("SI"));
      expect(text).not.toMatch(/undefined|NaN|unknown/);
      expect(/hide on the way/.test(text)).toBe(shipped(name).unit.leak!.hiding.capacity > 0);
    }
    expect(leakText(shipped("taxi-shaft-seal").unit.leak!, withOther("SI"))).toMatch(/converter's hub/);
  });
});
