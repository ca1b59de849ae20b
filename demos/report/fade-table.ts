// "No pressure, no clutch, no harm": what the slip costs, by the time over which the pressure goes.

import { gulpTime, type FadeRow } from "../../src/history/fade.ts";
import { spanText } from "../../src/plots/fade-time.ts";
import type { Computed } from "./compute.ts";
import type { Amount, Table } from "./table.ts";

export function fadeTable({ fades }: Pick<Computed, "fades">): Table {
  const times = [...new Set(fades.map(({ time }) => time))];
  const heat = (time: number, kind: FadeRow["kind"]) =>
    fades.find((row) => row.time === time && row.kind === kind)!.energy;
  const least = heat(times[0]!, "falls once");
  return {
    title: "Slip heat in the clutch, by the time over which its pressure goes",
    columns: [
      { says: "over" },
      { says: "falls once", right: true },
      { says: `times the heat of ${spanText(times[0]!)}`, right: true },
      { says: "comes and goes for as long", right: true },
    ],
    rows: times.map((time) => [
      spanText(time),
      joules(heat(time, "falls once")),
      timesText(heat(time, "falls once") / least),
      time < gulpTime ? "gone, not yet back" : joules(heat(time, "comes and goes")),
    ]),
  };
}

/** Heat in handy numbers: J, kJ or MJ beside BTU. */
export function joules(energy: number): Amount {
  const [unit, size] = energy < 1e3 ? ["J", 1] : energy < 1e6 ? ["kJ", 1e3] : (["MJ", 1e6] as const);
  return { US: `${handy(energy / 1055.05585262)} BTU`, SI: `${handy(energy / size)} ${unit}` };
}

const timesText = (ratio: number): string => (Number.isFinite(ratio) ? handy(ratio) : "");

/** Two digits, or three where they stand before the point. */
const handy = (value: number): string =>
  value < 100 ? String(Number(value.toPrecision(2))) : Number(value.toPrecision(3)).toLocaleString("en-US");
