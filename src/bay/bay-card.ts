// The bay card: every test of the bay on one unit, each value beside the band in which a sound unit lies.

import type { Unit } from "../physics/build.ts";
import { addedAtPlug, bands, betweenMarks, overLip, type Band } from "./bands.ts";
import { row, type BayRow, type Reading } from "./bay-row.ts";
import { coolerFlowTest } from "./cooler-flow-test.ts";
import { timeIntoGear, type Moment } from "./engagement-test.ts";
import { launchTest } from "./launch-test.ts";
import { levelChecks, type StickReading } from "./level-checks.ts";
import { linePressureTest, type LinePressure } from "./line-pressure-test.ts";

export interface BayCard {
  readonly unit: string;
  /** Fluid that the unit lacks [m³ at fill temperature]. */
  readonly shortage: number;
  readonly rows: readonly BayRow[];
  /** What the same dipstick shows when it is read at the wrong moment. */
  readonly misreadings: readonly BayRow[];
  /** Idle pressure is below its band in drive or in reverse: a tester makes no stall test. */
  readonly pressureLow: boolean;
  readonly cautions: readonly string[];
  /** What in its rows may be taken for a mistake, and why it is none. */
  readonly notes: readonly string[];
}

const NO_STALL = "pressure low at idle: no stall test";
const cautions = [
  "A stall test lasts at most five seconds and is never made at low pressure.",
  "Hot fluid under pressure burns and can be injected through skin; on a hot exhaust it can catch fire.",
  "A raised vehicle stands on stands. Brakes on, wheels chocked, nobody in front or behind.",
  "Used fluid is regulated waste. The maker's service information and local rules come first.",
];

/** The card of a unit that lacks `shortage` [m³ at fill temperature; negative: overfull]. The same unit gives the same card. */
export function bayCard(unit: Unit, shortage: number): BayCard {
  const drive = linePressureTest(unit, shortage, "drive");
  const reverse = linePressureTest(unit, shortage, "reverse");
  const pressureLow = drive.idle < bands.idleDrive.low || reverse.idle < bands.idleReverse.low;
  const looks = levelChecks(unit, shortage);
  const gears = gearRows(unit, shortage);
  return {
    unit: unit.build.name,
    shortage,
    rows: [
      ...idleRows(drive, reverse),
      ...stallRows("drive", drive, pressureLow, { band: bands.stallDrive, beside: bands.stallDrivePages }),
      ...stallRows("reverse", reverse, pressureLow, { band: bands.stallReverse }),
      launchRow(unit, shortage),
      ...coolerRows(unit, shortage),
      ...gears,
      stickRow(unit, "idle, park, hot", looks.stick),
      row("overflow plug", "warming up: runs from", {
        kind: "temperature",
        value: looks.runsFrom,
        band: bands.plugRunsFrom,
      }),
      row("overflow plug", "idle, 40 °C: over the lip", {
        kind: "length",
        value: looks.overLip,
        band: overLip(unit.build.sump.pan.length * unit.build.sump.pan.width * unit.build.sump.pan.free),
        note: looks.runs ? "it runs" : "it does not run",
      }),
      row("overflow plug", "idle, 40 °C: added until it ran", {
        kind: "volume",
        value: looks.added,
        band: addedAtPlug,
      }),
    ],
    misreadings: [
      stickRow(unit, "idle, park, fluid at 20 °C", looks.stickCold),
      stickRow(unit, "engine off after a night at 20 °C", looks.stickStood),
    ],
    pressureLow,
    cautions: pressureLow ? [`${NO_STALL[0]!.toUpperCase()}${NO_STALL.slice(1)}.`, ...cautions] : cautions,
    notes: coldAsQuick(gears) ? [COLD_NOTE] : [],
  };
}

/** One card for each shortage [m³ at fill temperature]. */
export function bayCards(unit: Unit, shortages: readonly number[]): BayCard[] {
  return shortages.map((shortage) => bayCard(unit, shortage));
}

function idleRows(drive: LinePressure, reverse: LinePressure): BayRow[] {
  const test = "line pressure";
  return [
    row(test, "idle, drive, hot", {
      kind: "pressure",
      value: drive.idle,
      band: bands.idleDrive,
      beside: bands.idleDriveOnePage,
    }),
    row(test, "idle, reverse, hot", {
      kind: "pressure",
      value: reverse.idle,
      band: bands.idleReverse,
      beside: bands.idleReverseOnePage,
    }),
    row(test, "idle, reverse over drive", {
      kind: "ratio",
      value: reverse.idle / drive.idle,
      band: bands.reverseOverDrive,
    }),
  ];
}

function stallRows(
  gear: "drive" | "reverse",
  { stallLowest, stallFinal, stallSpeed, stallSlips }: LinePressure,
  pressureLow: boolean,
  limits: Pick<BayRow, "band" | "beside">,
): BayRow[] {
  const engine = `engine up to ${Math.round((stallSpeed * 30) / Math.PI)} rpm`;
  const seen = stallSlips ? `${engine}, an element slips` : engine;
  const note = pressureLow ? `${NO_STALL}; it would show: ${seen}` : seen;
  const read = (value: number): Reading => ({ kind: "pressure", value, note, ...limits });
  return [
    row("line pressure", `stall, ${gear}, hot: lowest in 5 s`, read(stallLowest)),
    row("line pressure", `stall, ${gear}, hot: at the end`, read(stallFinal)),
  ];
}

function launchRow(unit: Unit, shortage: number): BayRow {
  const { lowest, mostGas } = launchTest(unit, shortage);
  return row("line pressure", "launch at 0.25 g, hot: lowest", {
    kind: "pressure",
    value: lowest,
    band: bands.launch,
    note: `gas at the pump up to ${Math.round(100 * mostGas)} %`,
  });
}

function coolerRows(unit: Unit, shortage: number): BayRow[] {
  const { caught, flow } = coolerFlowTest(unit, shortage);
  return [
    row("cooler return", "idle, neutral, hot: in 20 s", {
      kind: "volume",
      value: caught,
      band: bands.coolerCan,
    }),
    row("cooler return", "idle, neutral, hot: flow", { kind: "flow", value: flow, band: bands.coolerFlow }),
  ];
}

const moments: readonly (readonly [Moment, string, Band])[] = [
  ["hot", "hot", bands.intoGearHot],
  ["hot, nose up", "hot, nose up on a 20 % ramp", bands.intoGearHot],
  ["cold start", "-5 °C, just started after a night", bands.intoGearCold],
  ["cold, idled", "-5 °C, after a minute at idle", bands.intoGearCold],
];

function gearRows(unit: Unit, shortage: number): BayRow[] {
  return moments.flatMap(([moment, words, band]) =>
    (["drive", "reverse"] as const).map((gear) =>
      row("time into gear", `${gear}, ${words}`, {
        kind: "seconds",
        value: timeIntoGear(unit, shortage, gear, moment),
        band,
      }),
    ),
  );
}

/** Cold rows within this share of the hot ones want a word. */
const AS_QUICK = 0.1;
const COLD_NOTE =
  "Cold it goes into gear as quickly as hot: here a clutch fills through a sharp-edged hole, which lets thick fluid pass as fast while the line holds its " +
  "pressure, and the controller closes it in the time that it aims at. Thick fluid in long passages and a cold valve body, which make a real unit slower, " +
  "are not reckoned with: read the cold times as the least.";

/** Whether a cold row comes out no slower than the hot one of its gear. */
const coldAsQuick = (rows: readonly BayRow[]): boolean =>
  (["drive", "reverse"] as const).some((gear) => {
    const [hot, , cold, idled] = rows.filter(({ condition }) => condition.startsWith(gear));
    return [cold, idled].some(
      (row) => row!.value !== null && hot!.value !== null && row!.value < (1 + AS_QUICK) * hot!.value,
    );
  });

function stickRow(unit: Unit, condition: string, { depth, position }: StickReading): BayRow {
  const { low, full } = unit.build.sump.stick;
  return row("dipstick", condition, {
    kind: "length",
    value: depth,
    band: betweenMarks(low, full),
    note: whereOnStick(position),
  });
}

/** Where a technician would say it stands. A stick is read to about a tenth of the way between its marks. */
function whereOnStick(position: number): string {
  if (Math.abs(position) < 0.1) return `at the low mark${position < 0 ? ", if anything under it" : ""}`;
  if (Math.abs(position - 1) < 0.1) return `at the full mark${position > 1 ? ", if anything over it" : ""}`;
  if (position < 0) return `below low by ${(-position).toFixed(1)} of the way from low to full`;
  if (position > 1) return `above full by ${(position - 1).toFixed(1)} of the way from low to full`;
  return `between the marks, ${Math.round(100 * position)} % of the way up`;
}
