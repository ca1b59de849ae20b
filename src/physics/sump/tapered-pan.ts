// A drawn pan whose walls lean outwards: level surface only.

import { impossible } from "../../errors.ts";

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
  if (!(pan.floorLength > 0 && pan.floorWidth > 0 && pan.rimLength > 0 && pan.rimWidth > 0 && pan.height > 0))
    impossible(
      "tapered pan",
      Math.min(pan.floorLength, pan.floorWidth, pan.rimLength, pan.rimWidth, pan.height),
      "sizes above 0 m",
    );
  if (Number.isNaN(depth)) impossible("depth", depth, "a number of metres");
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
  if (Number.isNaN(volume)) impossible("volume in the pan", volume, "a number of cubic metres");
  if (volume <= 0) return 0;
  if (volume >= volumeOfTapered(pan, pan.height)) return pan.height;
  let low = 0;
  let high = pan.height;
  for (;;) {
    const middle = low + 0.5 * (high - low);
    if (middle === low || middle === high) return middle;
    if (volumeOfTapered(pan, middle) < volume) low = middle;
    else high = middle;
  }
}
