// What the driver does about the first flare and the first slip that he feels: stop, go home, top up, or nothing.

import type { Reaction } from "../physics/build.ts";
import { density } from "../physics/fluid/density.ts";
import { panVolume } from "../physics/sump/holdup.ts";
import { volumeAtDepth } from "../physics/sump/pan.ts";
import { pouredIn, topUp } from "./parked.ts";
import type { HistoryEvent } from "./watch.ts";
import type { Walk } from "./walk.ts";

type Bottle = Extract<Reaction, { does: "tops up" }>;

/** What he has made up his mind to: odometer at which he stops [m] and what he calls that, and bottles to pour at the end of the trip, with the event that made him. */
export interface Resolve {
  stopsAt: number;
  as: "driver stopped" | "drove home";
  readonly pours: (Pick<Bottle, "volume" | "temperature"> & { readonly after: string })[];
}

export const noResolve = (): Resolve => ({ stopsAt: Infinity, as: "drove home", pours: [] });

/** The driver feels an event. Who stops stops where he is; who is on his way home keeps to the nearer end of two such ways. */
export function feels(event: HistoryEvent, reaction: Reaction, resolve: Resolve): void {
  const stopsAt =
    reaction.does === "stops"
      ? event.distance
      : reaction.does === "drives home"
        ? event.distance + reaction.distance
        : Infinity;
  if (stopsAt < resolve.stopsAt) {
    resolve.stopsAt = stopsAt;
    resolve.as = reaction.does === "stops" ? "driver stopped" : "drove home";
  }
  if (reaction.does === "tops up") {
    const { does: _, ...bottle } = reaction;
    resolve.pours.push({ ...bottle, after: event.name });
  }
}

/** Pours what he has decided to, at the temperature that was told or else the air's; calls `told` with the words for each bottle that was not empty. */
export function pour(walk: Walk, resolve: Resolve, told: (says: string) => void): void {
  const { road, unit } = walk;
  for (const { volume, temperature = road.ambient, after } of resolve.pours.splice(0)) {
    const bottle = density(unit.fluid.density15, temperature);
    const mass = volume === "to the full mark" ? lacking(walk) : volume * bottle;
    if (!(mass > 0)) continue;
    topUp(walk, mass, temperature);
    told(`${pouredIn(mass / bottle, temperature)} by the driver after the ${after}`);
  }
}

/** Fluid [kg, at the sump's temperature] that the stick lacks to its full mark, read as the engine is about to be turned off. */
function lacking({ now, state, unit }: Walk): number {
  const { pan, stick } = unit.build.sump;
  const inPan = panVolume(
    state.mass / now.density,
    state.converter,
    state.lines,
    state.passages,
    state.inFlight,
  );
  return Math.max(0, volumeAtDepth(pan, stick.full, 0, 0, stick.x, stick.y) - inPan) * now.density;
}
