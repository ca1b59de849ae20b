// A rule about parts of a build that must fit each other, and numbers as its faults tell them.

import type { FaultList } from "./fault-list.ts";
import type { PlainBuild } from "./gears.ts";

export type Part = keyof PlainBuild;

/** Tried only when the parts that it looks at were read; a number that could not be read passes. */
export interface Rule {
  readonly needs: readonly Part[];
  readonly check: (build: PlainBuild, list: FaultList) => void;
}

export const mm = (metres: number) => `${round(metres * 1e3)} mm`;
export const litres = (volume: number) => `${round(volume * 1e3)} L`;
export const kPa = (pressure: number) => `${round(pressure / 1e3)} kPa`;
export const kmh = (speed: number) => `${round(speed * 3.6)} km/h`;
export const degC = (temperature: number) => `${round(temperature - 273.15)} degC`;
export const rpm = (speed: number) => `${round((speed * 30) / Math.PI)} rpm`;
const round = (value: number) => Number(value.toPrecision(4));
