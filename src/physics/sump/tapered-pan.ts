// A drawn pan whose walls lean outwards: level surface only.

import { finite, positive } from "../../errors.ts";

/** Inside length and width at the floor and at the rim, and the height between them [m]. */
export interface TaperedPan {
  readonly floorLength: number;
  readonly floorWidth: number;
  readonly rimLength: number;
  readonly rimWidth: number;
  readonly height: number;
}

/** Volume [m³] below the depth [m], 0 to the height. Prismatoid rule, exact for straight walls. */
export function volumeOfTapered(pan: TaperedPan, depth: number): number {
  positive("floorLength", pan.floorLength, "m");
  positive("floorWidth", pan.floorWidth, "m");
  positive("rimLength", pan.rimLength, "m");
  positive("rimWidth", pan.rimWidth, "m");
  positive("height", pan.height, "m");
  finite("depth", depth, "m");
  const h = Math.min(Math.max(depth, 0), pan.height);
  const sx = (pan.rimLength - pan.floorLength) / pan.height;
  const sy = (pan.rimWidth - pan.floorWidth) / pan.height;
  return (
    h *
    (pan.floorLength * pan.floorWidth +
      (h * (pan.floorLength * sy + pan.floorWidth * sx)) / 2 +
      (h * h * sx * sy) / 3)
  );
}

/**
 * Depth [m] of the volume [m³] in a tapered pan: the inverse of `volumeOfTapered`, by halving; full when
 * overfull.
 */
export function depthOfTapered(pan: TaperedPan, volume: number): number {
  finite("volume in the pan", volume, "m³");
  const full = volumeOfTapered(pan, pan.height);
  if (volume <= 0) return 0;
  if (volume >= full) return pan.height;
  let low = 0;
  let high = pan.height;
  for (;;) {
    const middle = low + 0.5 * (high - low);
    if (middle === low || middle === high) return middle;
    if (volumeOfTapered(pan, middle) < volume) low = middle;
    else high = middle;
  }
}
