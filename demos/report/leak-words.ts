// The leak of a case in words and sizes: where, of what kind, how large, and what makes it grow.

import type { Leak, LeakOpening } from "../../src/physics/build.ts";
import { show, type UnitSystem } from "../../src/units/show.ts";

/** One or two sentences about the leak; null for a case without one. */
export function leakText(leak: Leak | null, system: UnitSystem): string | null {
  if (leak === null) return null;
  const inRail = leak.place === "pan-seam" ? `, ${seamPlace(leak, system)}` : "";
  const above = leak.height > 0 ? `, ${show(leak.height, "length", system)} above the pan's floor` : "";
  const hides =
    leak.hiding.capacity > 0
      ? ` ${show(leak.hiding.capacity, "volume", system)} of it hide on the way down before the first spot.`
      : "";
  return `${openingText(leak.opening, system)} ${where(leak)}${inRail}${above}.${hides}`;
}

function where({ place, fedBy }: Leak): string {
  switch (place) {
    case "supply-line":
      return "in the line to the cooler, where it has the converter's pressure behind it";
    case "return-line":
      return "in the return line, past the cooler";
    case "pan":
      return "in the pan, by its own head alone, running or parked";
    case "pan-seam":
      return "at the rail of the pan, by what stands over it there as the surface swings and drains back";
    case "shaft-seal":
      return fedBy === "converter-outlet"
        ? "past the seal at the converter's hub, fed by the converter's charge"
        : "past the seal of a shaft, fed by the lubrication";
  }
}

const seamPlace = ({ x, y }: Leak, system: UnitSystem): string =>
  `${show(x, "length", system)} from the rear and ${show(y, "length", system)} from the right wall`;

function openingText(opening: LeakOpening, system: UnitSystem): string {
  const size = (metres: number) => show(metres, "length", system);
  const hours = (seconds: number) => `${Number((seconds / 3600).toPrecision(3))} running hours`;
  switch (opening.kind) {
    case "hole":
      return `A hole of ${size(opening.diameter)} through a wall of ${size(opening.wall)}`;
    case "slot":
      return `A gap ${size(opening.length)} long, ${size(opening.gap)} high and ${size(opening.depth)} deep`;
    case "seal":
      return (
        `A seal of ${size(opening.diameter)} whose gap creeps from ${size(opening.clearance)} towards ` +
        `${size(opening.finalClearance)}, 63 % of the way in ${hours(opening.creepTime)},`
      );
    case "crack":
      return (
        `A crack that grows from ${size(2 * opening.halfLength)} to ${size(2 * opening.partsAt)} within ` +
        `${hours(opening.partsAfter)}, when the line parts,`
      );
    case "pit": {
      const { diameter, after, exponent, wall, bore } = opening;
      return (
        `A corrosion pit through a wall of ${size(wall)}, ${size(diameter)} wide ${Math.round(after / 86400)} days after it came through ` +
        `and wider by the calendar, parked or driven (as time to the power ${Number(exponent.toPrecision(3))}, at most ${size(bore)}),`
      );
    }
    case "rub": {
      const { tubeRadius, wall, contact, depthInHundredHours } = opening;
      return (
        `A flat of ${size(contact)} rubbed through the ${size(wall)} wall of a tube of ${size(2 * tubeRadius)}, at first ` +
        `${size(depthInHundredHours)} deeper in a hundred running hours, and slower as it widens,`
      );
    }
  }
}
