// What a look back reads off for the bay is what the bay's own procedures show.
import { expect, test } from "vitest";
import { linePressureTest } from "../../src/bay/line-pressure-test.ts";
import { inThePan, stoodFor } from "../../src/bay/ready.ts";
import { at, shownBy } from "../../src/lookback/shown.ts";
import { meanDepth } from "../../src/physics/sump/pan.ts";
import { hole, leaking, van } from "../emerge/van.ts";

// The tables' own points, so that nothing is read between two: 25 of them up to 0.8 of the fill.
test.each([0, 6, 12, 18])(
  "point %i: the gauge to a ten-thousandth, the parked pan to a tenth of a millimetre",
  (point) => {
    const unit = { ...van, leak: null };
    const shown = shownBy(unit, leaking("supply-line", hole(1e-4)), []);
    const shortage = point * shown.linePressure.step;
    const { idle } = linePressureTest(unit, shortage, "drive");
    expect(at(shown.linePressure, shortage) / idle).toBeCloseTo(1, 4);
    const depth = meanDepth(unit.build.sump.pan, inThePan(stoodFor(unit, shortage, 900, 293.15)));
    expect(Math.abs(at(shown.parkedDepth, shortage) - depth)).toBeLessThan(1e-4);
  },
);
