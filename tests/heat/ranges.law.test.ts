import { describe, expect, it } from "vitest";
import type { Range } from "../../src/errors.ts";
import { semiInfiniteRange, semiInfiniteRise } from "../../src/physics/heat/conduction.ts";
import { heislerRange, slabConvection } from "../../src/physics/heat/convection.ts";
import { effectiveness, effectivenessRange } from "../../src/physics/heat/cooler.ts";
import { flashRange, movingBandRise } from "../../src/physics/heat/flash.ts";
import { interfaceRange, interfaceRise } from "../../src/physics/heat/interface.ts";
import { filmCoefficient, filmRange } from "../../src/physics/heat/lubrication.ts";
import { partitionRange, steelShare } from "../../src/physics/heat/partition.ts";
import { lumpedRange, plateAfter } from "../../src/physics/heat/plate.ts";
import { slabRange, slabRise } from "../../src/physics/heat/slab.ts";
import { separatorSteel as steel, wetPaper } from "../../src/physics/heat/solid.ts";

const lubrication = { airCoefficient: 30, fullCoefficient: 900, fullFlow: 1 };
// Each law at both ends of its range and well outside it: a finite number every time.
const laws: readonly [Range, (x: number) => number][] = [
  [semiInfiniteRange, (fourier) => semiInfiniteRise(steel, 1e6, fourier, 0)],
  [heislerRange, (fourier) => slabConvection(1, fourier, 0.5)],
  [effectivenessRange, (ntu) => effectiveness(ntu, 0.7)],
  [flashRange, (peclet) => movingBandRise(steel, 1e9, { length: 1e-4, speed: peclet })],
  [interfaceRange, (ratio) => interfaceRise(1e6, 1, 0.015 * Math.max(1e-6, ratio))],
  [filmRange, (share) => filmCoefficient(share, lubrication)],
  [partitionRange, () => steelShare(steel, wetPaper)],
  [lumpedRange, (biot) => plateAfter(400, 360, 1000, 300, (biot * 46 * 0.05) / 0.0009, 1)],
  [slabRange, (ratio) => slabRise(steel, { thickness: 0.015 * Math.max(1e-6, ratio), flux: 1e6 }, 1, 0)],
];

describe("ranges of the heat laws", () => {
  it.each(laws.map(([range, law]) => ({ range, law })))("$range.law in $range.quantity", ({ range, law }) => {
    expect(range.low).toBeLessThan(range.high);
    expect(range.source.length).toBeGreaterThan(10);
    for (const x of [range.low, range.high, 10 * range.high]) expect(Number.isFinite(law(x))).toBe(true);
  });
});
