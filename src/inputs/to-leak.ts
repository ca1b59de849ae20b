// The leak that the physics reads, from a tree without faults.

import type { CreepingSeal, Leak, LeakOpening } from "../physics/build.ts";
import { density } from "../physics/fluid/density.ts";
import { dynamicViscosity, type Fluid } from "../physics/fluid/fluid.ts";
import { surfaceTension } from "../physics/fluid/surface-tension.ts";
import { annulusOpening } from "../physics/leak/annulus.ts";
import { dropVolume, flowFromDrops } from "../physics/leak/drop.ts";
import { leakFlow } from "../physics/leak/flow.ts";
import { corrosionExponent } from "../physics/leak/pits.ts";
import { told } from "./build-rule.ts";
import type { FaultList } from "./fault-list.ts";
import type { Plain } from "./gather.ts";
import type { LeakTree } from "./leak-schema.ts";

export type PlainLeak = Plain<LeakTree>;
type Seep = Extract<PlainLeak, { kind: "seep" }>;

/** Puts a checked leak into the shape of the physics; adds a fault when no gap gives the drops that were counted. */
export function toLeak(leak: PlainLeak, fluid: Fluid, list: FaultList): Leak {
  const { place, height, x, y, fedBy, lineAbove, columnHeight, dripRadius, hiding } = leak;
  return {
    place,
    opening: openingOf(leak, fluid, list),
    height,
    x,
    y,
    fedBy,
    lineAbove,
    columnHeight,
    dripRadius,
    hiding,
  };
}

function openingOf(leak: PlainLeak, fluid: Fluid, list: FaultList): LeakOpening {
  switch (leak.kind) {
    case "hole":
      return { kind: "hole", diameter: leak.diameter, wall: leak.wall };
    case "slot":
      return { kind: "slot", length: leak.length, gap: leak.gap, depth: leak.depth };
    case "seal": {
      const { diameter, length, eccentricity, clearance, finalClearance, creepTime } = leak;
      return { kind: "seal", diameter, length, eccentricity, clearance, finalClearance, creepTime };
    }
    case "seep":
      return sealFromDrops(leak, fluid, list);
    case "crack": {
      const { parisExponent, partsAfter, wall, modulus, poisson, bendingStress, restGap } = leak;
      return {
        kind: "crack",
        halfLength: leak.length / 2,
        partsAt: leak.partsAtLength / 2,
        partsAfter,
        parisExponent,
        wall,
        tubeRadius: (leak.tubeDiameter - wall) / 2, // mean radius of the wall
        modulus,
        poisson,
        bendingStress,
        restGap,
      };
    }
    case "pit": {
      const { diameter, after, wall, bore, material, aspect } = leak;
      const exponent = corrosionExponent[material === "steel" ? "steelRust" : "aluminiumPits"];
      const pit = { kind: "pit", diameter, after, exponent, wall, bore } as const;
      return aspect === undefined ? pit : { ...pit, aspect };
    }
    case "rub": {
      const { tubeDiameter, wall, contact, wornInHundredHours } = leak;
      const depthInHundredHours = wornInHundredHours;
      return { kind: "rub", tubeRadius: tubeDiameter / 2, wall, contact, depthInHundredHours };
    }
  }
}

function sealFromDrops(seep: Seep, fluid: Fluid, list: FaultList): CreepingSeal {
  const { diameter, length, eccentricity, creepTime } = seep;
  return {
    kind: "seal",
    diameter,
    length,
    eccentricity,
    creepTime,
    clearance: clearanceForDrops(seep, seep.drops, "leak.drops", fluid, list),
    finalClearance: clearanceForDrops(seep, seep.finalDrops, "leak.finalDrops", fluid, list),
  };
}

/**
 * Radial clearance [m] through which a fitting loses so many drops a minute at the pressure and temperature of the
 * count: the annulus law read backwards, by halving the bracket (flow rises with clearance).
 */
function clearanceForDrops(seep: Seep, drops: number, path: string, fluid: Fluid, list: FaultList): number {
  const { pressure, temperature } = seep.countedAt;
  const viscosity = dynamicViscosity(fluid, temperature, 0);
  const rho = density(fluid.density15, temperature);
  const wanted = flowFromDrops(drops, dropVolume(seep.dripRadius, surfaceTension(temperature), rho));
  const flow = (clearance: number) =>
    leakFlow(
      annulusOpening(seep.diameter, clearance, seep.length, seep.eccentricity),
      pressure,
      viscosity,
      rho,
    );
  let low = 1e-9;
  let high = seep.diameter / 4;
  if (!(flow(high) > wanted)) {
    list.want(
      false,
      path,
      `fewer drops than a gap of ${told.length(high)} passes`,
      `${drops} drops/min`,
      '"60 drops/min"',
    );
    return high;
  }
  for (let i = 0; i < 200 && high - low > 1e-15 * high; i++) {
    const middle = Math.sqrt(low * high);
    if (flow(middle) > wanted) high = middle;
    else low = middle;
  }
  return Math.sqrt(low * high);
}
