// The suction passage remembers: what the pickup drew a moment ago is what the pump gets now.

import { finite, fraction, notNegative } from "../../errors.ts";

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
  const passes = flow > 0 && dt > 0;
  const after = passes ? pickupGas + (gas - pickupGas) * Math.exp((-flow * dt) / suctionVolume) : gas;
  if (!(
    after >= 0 &&
    after <= 1 &&
    gas >= 0 &&
    pickupGas >= 0 &&
    flow < Infinity &&
    dt >= 0 &&
    suctionVolume >= 0
  ))
    refuse(gas, pickupGas, flow, suctionVolume, dt);
  return after;
}

function refuse(gas: number, pickupGas: number, flow: number, suctionVolume: number, dt: number): void {
  fraction("gas fraction in the passage", gas);
  fraction("gas fraction at the pickup", pickupGas);
  finite("flow", flow, "m³/s");
  notNegative("volume of the suction passage", suctionVolume, "m³");
  notNegative("dt", dt, "s");
}
