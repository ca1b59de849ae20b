import { type GearTrain } from "./gears.ts";

/** The gear train of the invented van: tooth counts chosen for this project so that both sets assemble (assumed). */
export const vanTrain: GearTrain = {
  front: { sun: 42, ring: 70 },
  rear: { smallSun: 30, largeSun: 38, ring: 78 },
};
