import { readFileSync } from "node:fs";
import { join } from "node:path";
import { describe, expect, it } from "vitest";
import { readBuild } from "../../src/inputs/case.ts";
import { capacity, kissPressure, liningPressure } from "../../src/physics/clutch/capacity.ts";
import { lockupCapacity } from "../../src/physics/clutch/lockup.ts";
import { faceArea } from "../../src/physics/clutch/geometry.ts";
import { fullTorque } from "../../src/physics/load/engine.ts";
import { panCapacity } from "../../src/physics/sump/pan.ts";
import { setPoint } from "../../src/physics/supply/regulator.ts";
import { originText } from "../../src/sources/origin.ts";
import { referenceData } from "./shipped.ts";

const hot = 353.15;
const shippedBuilds = [
  { folder: "parcel-van", ratios: ["4.16", "2.44", "1.52", "1.00", "0.67", "-3.28"], final: 3.73 },
  { folder: "town-taxi", ratios: ["2.79", "1.64", "1.00", "0.64", "-1.80"], final: 3.95 },
].map(({ folder, ...teeth }) => ({
  ...teeth,
  ...readBuild(JSON.parse(readFileSync(join(referenceData, folder, "build.json"), "utf8"))),
}));

describe.each(shippedBuilds)("the $build.name", ({ build, origins, ratios, final }) => {
  const rated = build.ratedTurbineTorque;
  const pressureIn = (reverse: boolean) => setPoint(build.regulator, rated, reverse, hot, 0);
  const loads = (clutch: number) =>
    [...build.gears, build.reverse].flatMap((gear) => {
      const share = gear.holds.find((held) => held.clutch === clutch)?.share;
      return share === undefined ? [] : [{ share, pressure: pressureIn(gear === build.reverse) }];
    });

  it("says where every number comes from, and every assumed one why", () => {
    for (const [path, { origin }] of Object.entries(origins)) {
      expect(origin, path).not.toBeNull();
      if (origin?.kind === "assumed") expect(origin.because, path).toBeTruthy();
      if (origin) expect(originText(origin)).toContain(origin.source);
    }
  });

  it.each(build.clutches.map(({ name }, i) => [name, i] as const))(
    "%s is sized with a margin that is usual",
    (_, i) => {
      const clutch = build.clutches[i]!;
      const margins = loads(i).map(
        ({ share, pressure }) => capacity(clutch, pressure, clutch.friction.base) / (share * rated),
      );
      expect(Math.min(...margins)).toBeGreaterThan(1.3);
      expect(Math.min(...margins)).toBeLessThan(1.9);
      expect(kissPressure(clutch)).toBeGreaterThan(60e3);
      expect(kissPressure(clutch)).toBeLessThan(120e3);
      const lining = Math.max(...loads(i).map(({ pressure }) => liningPressure(clutch, pressure)));
      expect(lining).toBeGreaterThan(0.7e6);
      expect(lining).toBeLessThan(1.75e6);
      expect(clutch.coolingArea / (clutch.faces * faceArea(clutch))).toBeCloseTo(1, 2);
      const plates = clutch.steelMass / (7850 * clutch.steelThickness * faceArea(clutch));
      expect(plates).toBeGreaterThan(clutch.faces / 2);
      expect(plates).toBeLessThan(clutch.faces / 2 + 4);
    },
  );

  it("locks up with a margin over the engine's best", () => {
    const { clutch } = build.lockUp;
    const best = Math.max(...Array.from({ length: 100 }, (_, i) => fullTorque(build.engine, 80 + 5 * i)));
    const margin = lockupCapacity(clutch, clutch.most, clutch.friction.base) / best;
    expect(margin).toBeGreaterThan(1.3);
    expect(margin).toBeLessThan(1.9);
  });

  it("has the ratios of its teeth", () => {
    expect([...build.gears, build.reverse].map(({ ratio }) => ratio.toFixed(2))).toEqual(ratios);
    expect(build.finalRatio).toBeCloseTo(final, 2);
  });

  it("holds its fill, and the marks lie where the full unit idles", () => {
    const { converter, coolerAndLines, passages } = build.holdUp;
    const standing = build.fill - converter - coolerAndLines - passages;
    const { pan, stick } = build.sump;
    expect(standing).toBeLessThan(panCapacity(pan));
    const depth = standing / (pan.free * pan.length * pan.width);
    expect(stick.full).toBeLessThan(depth);
    expect(stick.full).toBeGreaterThan(0.85 * depth);
  });
});
