// What a sound unit shows in the bay, and who says so.

import type { Origin } from "../sources/origin.ts";

/** From `low` to `high` in SI, a missing end open; read on the factory page or said by the trade. */
export interface Band extends Origin {
  readonly low: number | null;
  readonly high: number | null;
}

const kPa = 1e3;
/** US liquid quart [m³], the trade's measure for what runs out of a hose. */
export const quart = 9.46352946e-4;

const pages = "line pressures on five factory repair-manual pages, passenger transmissions and transaxles";
const onePage = "line pressures on one factory repair-manual page, passenger transmission";
const shops = "general repair pages and shops, 2002 to 2024";

const inDrive = {
  low: 350 * kPa,
  high: 700 * kPa,
  kind: "common practice",
  source: "idle pressure in drive, 50 to 100 psi",
} as const satisfies Band;
const reverseOverDrive = {
  low: 1.3,
  high: 2,
  kind: "common practice",
  source: "idle pressure in reverse over that in drive",
} as const satisfies Band;

export const bands = {
  idleDrive: inDrive,
  idleDriveOnePage: { low: 377 * kPa, high: 436 * kPa, kind: "published", source: onePage },
  reverseOverDrive,
  idleReverse: {
    low: inDrive.low * reverseOverDrive.low,
    high: inDrive.high * reverseOverDrive.high,
    kind: "common practice",
    source: "1.3 to 2 times the idle pressure in drive",
  },
  idleReverseOnePage: { low: 536 * kPa, high: 634 * kPa, kind: "published", source: onePage },
  stallDrive: {
    low: 1000 * kPa,
    high: 2000 * kPa,
    kind: "common practice",
    source: "full-load pressure, 150 to 290 psi",
  },
  stallDrivePages: { low: 931 * kPa, high: 2000 * kPa, kind: "published", source: pages },
  stallReverse: { low: 1250 * kPa, high: 1968 * kPa, kind: "published", source: pages },
  launch: {
    low: 350 * kPa,
    high: null,
    kind: "common practice",
    source: "no less than the lowest idle pressure in drive, 50 psi, while the pickup is covered",
  },
  coolerCan: {
    low: quart,
    high: null,
    kind: "common practice",
    source: "at least 1 qt in 20 s at idle, hot",
  },
  coolerFlow: {
    low: quart / 30,
    high: null,
    kind: "published",
    source: "factory repair manual, front-drive transaxle, 2002",
    where: "about 1 qt in 30 s at idle in neutral is a liberal flow",
  },
  intoGearHot: { low: 0, high: 1, kind: "common practice", source: shops, because: "under 1 s is normal" },
  intoGearCold: { low: 0, high: 2, kind: "common practice", source: shops, because: "2 to 3 s is slow" },
  plugRunsFrom: {
    low: 308.15,
    high: 318.15,
    kind: "published",
    source: "overflow-plug checks in factory repair manuals",
    where: "35 to 45 degC, idling: a thin stream or a drip when right",
  },
} as const satisfies Record<string, Band>;

/** Depth between the marks of a dipstick [m]. */
export const betweenMarks = (low: number, full: number): Band => ({
  low,
  high: full,
  kind: "published",
  source: "dipstick checks in factory repair manuals, 2002 to 2007",
  where: "between the marks at 70 to 93 degC, idling in park",
});

/** What may lack at an overflow plug [m³]: as much as a dipstick allows between low and full. */
export const addedAtPlug: Band = {
  low: 0,
  high: 0.4e-3,
  kind: "published",
  source: "factory repair manual, small front-drive car",
  where: "0.4 L from the low to the full mark, hot",
};

/** The same 0.4 L, half above and half below the lip, as heights over a pan's free area [m²]. */
export const overLip = (area: number): Band => ({
  low: -0.2e-3 / area,
  high: 0.2e-3 / area,
  kind: "computed",
  source: "the published 0.4 L between the marks of a dipstick, over the pan's free area",
});
