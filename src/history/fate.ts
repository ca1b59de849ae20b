// What has become of each clutch by the end of a history.

import { faceArea, type Clutch } from "../physics/clutch/geometry.ts";
import { damageIndex } from "../physics/damage/damage-index.ts";
import { debris, type Debris } from "../physics/damage/debris.ts";
import { shareLeft } from "../physics/holding.ts";
import type { State } from "../physics/state.ts";
import { margins } from "./margin.ts";
import type { Measures } from "./measures.ts";
import type { Walk } from "./walk.ts";

export interface ClutchFate {
  readonly name: string;
  readonly damage: number;
  readonly glazed: number;
  readonly charred: number;
  readonly worn: number;
  readonly hottest: number;
  /** Heat of slips, and of sound shifts [J]. */
  readonly slipEnergy: number;
  readonly shiftEnergy: number;
  readonly slips: number;
  /** How much earlier the controller had learned to fill it [s]; 0 for the lock-up clutch. */
  readonly learnedFill: number;
  /** Lining that it has lost by then [kg]: in pan, filter and fluid, or gone with what leaked. */
  readonly debris: Debris;
}

/** Every clutch with its damage, the lock-up clutch last; `slips` counts those of each. */
export function fatesOf(walk: Walk, { hottest }: Measures, slips: Float64Array): ClutchFate[] {
  const { unit, state } = walk;
  const { build } = unit;
  const marginOf = margins(unit);
  return Array.from({ length: state.plate.length }, (_, i) => {
    const clutch = build.clutches[i] ?? build.lockUp.clutch;
    return {
      name: clutch.name,
      damage: damageIndex(shareLeft(build, state, i), marginOf[i]!),
      glazed: state.glaze[i]!,
      charred: state.char[i]!,
      worn: state.wear[i]!,
      hottest: hottest[i]!,
      slipEnergy: walk.slipEnergy[i]!,
      shiftEnergy: walk.shiftEnergy[i]!,
      slips: slips[i]!,
      learnedFill: state.learnedFill[i] ?? 0,
      debris: debrisOf(clutch, state, i),
    };
  });
}

function debrisOf(clutch: Clutch, { wear, char }: State, i: number): Debris {
  return debris(clutch.faces * faceArea(clutch), clutch.liningThickness, wear[i]!, char[i]!);
}
