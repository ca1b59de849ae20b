import { type Trace } from "./trace.ts";

// Breakpoints of UN Regulation 83, annex 4: time [s], speed [km/h], straight lines between.
// prettier-ignore
const urban = [
  [0, 0], [11, 0], [15, 15], [23, 15], [25, 10], [28, 0], [49, 0], [54, 15], [56, 15], [61, 32], [85, 32], [93, 10],
  [96, 0], [117, 0], [122, 15], [124, 15], [133, 35], [135, 35], [143, 50], [155, 50], [163, 35], [176, 35],
  [178, 32], [185, 10], [188, 0], [195, 0],
] as const;
// prettier-ignore
const extraUrban = [
  [0, 0], [20, 0], [25, 15], [27, 15], [36, 35], [38, 35], [46, 50], [48, 50], [61, 70], [111, 70], [119, 50],
  [188, 50], [201, 70], [251, 70], [286, 100], [316, 100], [336, 120], [346, 120], [362, 80], [370, 50], [380, 0],
  [400, 0],
] as const;

type Points = readonly (readonly [number, number])[];

// Parts one after the other on a level, straight road; the joints, both at rest, are written once.
function level(name: string, parts: readonly Points[]): Trace {
  const points: [number, number][] = [[0, 0]];
  for (const part of parts) {
    const [start] = points[points.length - 1];
    for (const [time, speed] of part.slice(1)) points.push([start + time, speed / 3.6]);
  }
  return {
    name,
    time: Float64Array.from(points, ([time]) => time),
    speed: Float64Array.from(points, ([, speed]) => speed),
    grade: new Float64Array(points.length),
    lateral: new Float64Array(points.length),
  };
}

/** Urban part (ECE-15) of the New European Driving Cycle, 195 s, once. */
export const nedcUrban: Trace = level("NEDC urban part", [urban]);
/** Extra-urban part (EUDC), 400 s. */
export const nedcExtraUrban: Trace = level("NEDC extra-urban part", [extraUrban]);
/** New European Driving Cycle, 1180 s: four times the urban part, then the extra-urban one. UN Regulation 83. */
export const nedc: Trace = level("NEDC", [urban, urban, urban, urban, extraUrban]);
