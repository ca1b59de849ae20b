// The chain: every link at one instant, from the road to the slip, and the state that it is worked out from.

export { clutchesNow, fluidNow, instant, supplyNow } from "../physics/chain.ts";
export { newNow, type Now } from "../physics/now.ts";
export { copyOf, fresh, type State } from "../physics/state.ts";
export type { Road } from "../physics/road.ts";
