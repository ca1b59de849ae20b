// What is worked out once for a build, its fluid, a driver and a week, before any leak is known. Plain data: it can be kept, sent and read.

import type { Unit } from "../physics/build.ts";
import type { EventName } from "../history/watch.ts";
import type { Kinds } from "./kinds.ts";

/** Fluid lacking from one level of the tables to the next [kg]. */
export const levelStep = 0.25;

/** Openings are tabulated by s = inertial/viscous² [m²]: how far their flow is from a seep (small) to a jet (large). */
export const shapes = Float64Array.from({ length: 37 }, (_, i) => 10 ** (-18 + i / 3));

/** So many pieces are one where the leak is at the pan, whose level changes slowly. */
export const panPieces = 5;

/** What a stand is to a leak, for each level and kind of stand. */
export interface Stands {
  /** Length of the stand that was walked [s], and ∫dt/µ over it [1/Pa]. */
  readonly seconds: Float64Array;
  readonly fluidity: Float64Array;
  /** Viscosity at its end [Pa s], when everything is as cold as the air. */
  readonly viscosity: Float64Array;
  readonly density: Float64Array;
  /** Level in the pan, with what stands over its lid, mean by how easily the fluid flows meanwhile [m]. */
  readonly depth: Float64Array;
  /** That level at the end of what was walked, which a longer stand keeps [m]. */
  readonly rest: Float64Array;
}

/** Where the circuit may leak; a table each. */
export const circuitPlaces = ["supply-line", "return-line", "converter-outlet", "lubrication"] as const;

/** What leaks at one place of the circuit. */
export interface PlaceTables {
  /**
   * Mass that an opening of unit `viscous` [1/m³] loses [kg/m³] from the start of a trip to the end of each piece, times √(1 + s/s₀),
   * by level, kind, piece and shape.
   */
  readonly trips: Float64Array;
  /** The same for the whole week, by level and shape. */
  readonly week: Float64Array;
  /** Pressure that a seep there sees, mean by its flow [Pa], by level. */
  readonly pressure: Float64Array;
}

/** Lowest and highest value at which each of `watchedLaws` was used while up to so much was lacking [kg]; Infinity and -Infinity: it was not. */
export interface UsedUpTo {
  readonly lacking: number;
  readonly low: Float64Array;
  readonly high: Float64Array;
}

/** A week in air of one temperature, level by level. */
export interface Climate {
  readonly air: number;
  readonly levels: number;
  /** By place of the circuit, see `circuitPlaces`. */
  readonly circuit: readonly PlaceTables[];
  /** By level and every `panPieces`th piece of each kind: mean level in the pan [m], viscosity [Pa s], density [kg/m³]. */
  readonly panDepth: Float64Array;
  readonly panViscosity: Float64Array;
  readonly panDensity: Float64Array;
  readonly stands: Stands;
  /** Share of the fluid's life that a week takes, by level. */
  readonly ageing: Float64Array;
  /** What the controller has learned at each level in the long run: trim, mean over the week's trips [Pa], and, by clutch of the gears, how much earlier it fills [s]. */
  readonly trim: Float64Array;
  readonly fills: Float64Array;
  /** By every loss that was walked, rising. */
  readonly used: readonly UsedUpTo[];
}

/**
 * A moment of a kind of trip at which an event happens once enough is lacking, in air of one temperature: from which loss on and up to
 * which [kg], and when [s since the trip began]. `colder` and `warmer` tell how both losses change with the air on either side [kg/K].
 */
export interface Candidate {
  readonly kind: number;
  readonly piece: number;
  readonly critical: number;
  readonly until: number;
  readonly time: number;
  /** A clutch has burnt before it in the trip: it comes only where that does. */
  readonly follows: boolean;
  readonly colder: number;
  readonly warmer: number;
}

/** An event and the moments of the week at which it can come first in its trip: airs ascend [K], and each has its own moments. */
export interface Threshold {
  readonly name: EventName;
  readonly clutch?: string;
  readonly condition: string;
  readonly airs: readonly number[];
  readonly moments: readonly (readonly Candidate[])[];
}

/** What follows in the trips after the one in which a clutch burns, with the linings as they are then. */
export interface Aftermath {
  readonly air: number;
  readonly kind: number;
  /** Loss at which it was walked [kg]. */
  readonly lacking: number;
  /** Running seconds since the clutch burnt. */
  readonly events: readonly {
    readonly name: EventName;
    readonly clutch?: string;
    readonly condition: string;
    readonly after: number;
  }[];
}

export interface Prepared extends Kinds {
  /** The unit without its leak. */
  readonly unit: Unit;
  readonly climates: readonly Climate[];
  readonly thresholds: readonly Threshold[];
  readonly aftermaths: readonly Aftermath[];
}
