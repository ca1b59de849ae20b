// The suction passage remembers: what the pickup drew a moment ago is what the pump gets now.

import { impossible } from "../../errors.ts";

/**
 * Gas fraction at the pump inlet after dt [s]: the passage as one mixed volume [m³] through which the drawn
 * flow [m³/s] passes, x' = (x_pickup - x) Q/V, exact while x_pickup and Q hold. With no volume the pump gets
 * what the pickup draws. A loop of drawn gas and spill that has two steady answers is made unique by this
 * march.
 */
export function suctionGasAfter(
  gas: number,
  pickupGas: number,
  flow: number,
  suctionVolume: number,
  dt: number,
): number {
  if (!(suctionVolume >= 0)) impossible("volume of the suction passage", suctionVolume, "0 m³ or more");
  if (!(flow > 0 && dt > 0)) return gas;
  return pickupGas + (gas - pickupGas) * Math.exp((-flow * dt) / suctionVolume);
}
