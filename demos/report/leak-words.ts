// The leak of a case in words and sizes: where, of what kind, how large, and what makes it grow.

import type { Leak, LeakOpening } from "../../src/physics/build.ts";
import type { Tell } from "./said.ts";

/** One or two sentences about the leak. */
export function leakText(leak: Leak, tell: Tell): string {
  const inRail = leak.place === "pan-seam" ? `, ${seamPlace(leak, tell)}` : "";
  const above = leak.height > 0 ? `, ${tell(leak.height, "length")} above the pan's floor` : "";
  const hides =
    leak.hiding.capacity > 0
      ? ` ${tell(leak.hiding.capacity, "volume")} of it hide on the way down before the first spot.`
      : "";
  return `${openingText(leak.opening, tell)} ${where(leak)}${inRail}${above}.${hides}`;
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

const seamPlace = ({ x, y }: Leak, tell: Tell): string =>
  `${tell(x, "length")} from the rear and ${tell(y, "length")} from the right wall`;

function openingText(opening: LeakOpening, tell: Tell): string {
  const size = (metres: number) => tell(metres, "length");
  // Nobody measures the gap of a seal: it is reckoned back from drops.
  const gap = (metres: number) => tell(metres, "length", 2);
  const hours = (seconds: number) => `${Number((seconds / 3600).toPrecision(3))} running hours`;
  switch (opening.kind) {
    case "hole":
      return `A hole of ${size(opening.diameter)} through a wall of ${size(opening.wall)}`;
    case "slot":
      return `A gap ${size(opening.length)} long, ${size(opening.gap)} high and ${size(opening.depth)} deep`;
    case "seal":
      return (
        `A seal of ${size(opening.diameter)} whose gap creeps from ${gap(opening.clearance)} towards ` +
        `${gap(opening.finalClearance)}, 63 % of the way in ${hours(opening.creepTime)},`
      );
    case "crack":
      return (
        `A crack that grows from ${size(2 * opening.halfLength)} to ${size(2 * opening.partsAt)} within ` +
        `${hours(opening.partsAfter)}, when the line parts,`
      );
    case "pit": {
      const { diameter, after, exponent, wall, bore, aspect } = opening;
      const power = `time to the power ${Number(exponent.toPrecision(3))}`;
      const grows =
        aspect === undefined ? `as ${power}` : `cut by the wall from a pit that deepens as ${power}`;
      return (
        `A corrosion pit through a wall of ${size(wall)}, ${size(diameter)} wide ${Math.round(after / 86400)} days after it came through ` +
        `and wider by the calendar, parked or driven (${grows}, at most ${size(bore)}),`
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
