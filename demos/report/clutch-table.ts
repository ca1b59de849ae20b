// What has become of each clutch, and what a teardown would find on its steels.

import type { History } from "../../src/history/simulate.ts";
import type { Case } from "../../src/inputs/case.ts";
import { dateOf } from "../../src/inputs/plan.ts";
import type { Debris } from "../../src/physics/damage/debris.ts";
import { temperatureOfTint, temperColour, tintRange, tints } from "../../src/physics/damage/tint.ts";
import { joules } from "./fade-table.ts";
import { alone, inBoth, type Tell } from "./said.ts";
import { amount, type Amount, type Table } from "./table.ts";

const marks = ["damage 0.1", "damage 0.5", "damage 1"] as const;

export function clutchTable(given: Case, { clutches, events }: Pick<History, "clutches" | "events">): Table {
  const reached = (name: (typeof marks)[number], clutch: string) => {
    const event = events.find((one) => one.name === name && one.clutch === clutch);
    return event === undefined ? "never" : dateOf(given, event.clock);
  };
  return {
    title: "Each clutch at the end",
    columns: [
      { says: "clutch" },
      { says: "damage", right: true },
      { says: "state" },
      ...marks.map((says) => ({ says })),
      { says: "hottest steel", right: true },
      { says: "temper tint that a teardown would show, and what it tells", prose: true },
    ],
    rows: clutches.map((clutch) => [
      clutch.name,
      clutch.damage >= 1 ? "over 1" : clutch.damage.toFixed(2),
      stateOf(clutch.damage),
      ...marks.map((mark) => reached(mark, clutch.name)),
      amount(clutch.hottest, "temperature"),
      inBoth((system) => tintText(clutch.hottest, alone(system))),
    ]),
    grave: (row) => clutches[row]!.damage >= 1,
  };
}

/** What slip has done to each lining, and what the control has learned from it. */
export function liningTable({ clutches }: Pick<History, "clutches">): Table {
  return {
    title: "Each clutch's lining at the end",
    columns: [
      { says: "clutch" },
      { says: "slip heat", right: true },
      { says: "charred", right: true },
      { says: "glazed", right: true },
      { says: "worn", right: true },
      { says: "lining gone", right: true },
      { says: "learned fill", right: true },
    ],
    rows: clutches.map((clutch) => [
      clutch.name,
      joules(clutch.slipEnergy),
      share(clutch.charred),
      share(clutch.glazed),
      wornText(clutch.worn),
      lost(clutch.debris),
      `${Math.round(1000 * clutch.learnedFill)} ms`,
    ]),
    grave: (row) => clutches[row]!.damage >= 1,
  };
}

function stateOf(damage: number): string {
  if (damage >= 1) return "burnt";
  if (damage >= 0.5) return "more than half way to burnt";
  return damage >= 0.1 ? "begun to burn" : "sound";
}

/** Depth of wear [m], in thousandths of an inch or of a millimetre. */
const wornText = (depth: number): Amount => ({
  US: `${(depth / 25.4e-6).toFixed(2)} thou`,
  SI: `${(depth * 1e6).toFixed(1)} µm`,
});

/** Less than this of an ounce or a gram is not told: nobody weighs it. */
const LEAST = 0.01;

/** What has left the plates, from what surely has to what may have: a little to look for in pan and filter. */
function lost({ least, most }: Debris): Amount {
  const span = (perKilogram: number, unit: string) => {
    const text = (kg: number) =>
      kg * perKilogram >= 9.95
        ? (kg * perKilogram).toFixed(0)
        : String(Number((kg * perKilogram).toPrecision(2)));
    if (most * perKilogram < LEAST) return most > 0 ? `under ${LEAST} ${unit}` : `0 ${unit}`;
    if (least * perKilogram < LEAST) return `up to ${text(most)} ${unit}`;
    const [low, high] = [text(least), text(most)];
    return low === high ? `${low} ${unit}` : `${low} to ${high} ${unit}`;
  };
  return { US: span(35.27396195, "oz"), SI: span(1000, "g") };
}

const share = (part: number): string => `${(100 * part).toFixed(part > 0 && part < 0.1 ? 1 : 0)} %`;

/**
 * The colours that bright steel has after one minute and after one hour at its hottest, and the temperatures that who sees
 * them may read from them, time unknown between those. A temperature only: no colour tells a date.
 */
export function tintText(hottest: number, tell: Tell): string {
  const held = { shortest: tintRange.low, longest: tintRange.high };
  const [soonest, latest] = [temperColour(hottest, held.shortest), temperColour(hottest, held.longest)];
  const text = (temperature: number) => tell(temperature, "temperature");
  if (latest === tints[0]!.name) return `none: under ${text(temperatureOfTint(tints[1]!.name, held)!.high)}`;
  const { low } = temperatureOfTint(soonest, held)!;
  const { high } = temperatureOfTint(latest, held)!;
  if (soonest === tints[0]!.name) return `none to ${latest}: under ${text(high)}`;
  if (soonest === tints.at(-1)!.name) return `${soonest}: over ${text(low)}`;
  const names = soonest === latest ? soonest : `${soonest} to ${latest}`;
  return `${names}: ${text(low)} to ${text(high)}`;
}
