// What contradicts itself outside the build: the fluid, the leak and the dates.

import { given } from "../units/parse.ts";
import type { PlainCase } from "./case-schema.ts";
import { dateExample, dateExpected, dateSeconds, lastSecond } from "./dates.ts";
import type { FaultList } from "./fault-list.ts";
import { sinceStart } from "./moments.ts";

/** Adds every contradiction of the parts that are `there`. A number that could not be read passes every rule. */
export function caseContradictions(tree: PlainCase, there: (path: string) => boolean, list: FaultList): void {
  if (there("fluid")) fluid(tree, list);
  if (there("leak") && tree.leak !== null) leak(tree.leak, list);
  if (there("leak") && tree.leak !== null && there("build.sump")) {
    inThePan(tree.leak, tree.build.sump.pan, list);
    fits(tree.leak, tree.build.sump.pan, list);
  }
  if (there("leak") && tree.leak?.kind === "rub" && tree.leak.wornAtStart !== undefined && there("opens"))
    list.want(
      "after" in tree.opens && !(tree.opens.after > 0),
      "opens",
      "nothing, when leak.wornAtStart says when the wall is through",
      "another moment",
    );
  if (there("fillShort") && there("build.fill"))
    list.want(
      !(tree.fillShort >= tree.build.fill),
      "fillShort",
      `less than the fill (${tree.build.fill * 1e3} L)`,
      `${tree.fillShort * 1e3} L`,
      '"1 qt"',
    );
  if (there("start")) dates(tree, there, list);
}

function inThePan(
  { place, height, x, y }: NonNullable<PlainCase["leak"]>,
  pan: PlainCase["build"]["sump"]["pan"],
  { want }: FaultList,
): void {
  const within = (value: number, most: number, path: string, expected: string) =>
    want(!(value > most), path, expected, millimetres(value), '"5 mm"');
  if (place === "pan" || place === "pan-seam")
    within(height, pan.height, "leak.height", "a hole in the pan below its top");
  if (place !== "pan-seam") return;
  within(x, pan.length, "leak.x", "a place of the pan's rail");
  within(y, pan.width, "leak.y", "a place of the pan's rail");
}

/** Wider than any cooler line of a road vehicle [m]. */
const WIDEST_LINE = 0.025;

/** A leak is no larger than the part that it is in. */
function fits(
  opening: Opening,
  { length, width }: PlainCase["build"]["sump"]["pan"],
  { want }: FaultList,
): void {
  const onLine = opening.place === "supply-line" || opening.place === "return-line";
  const most = onLine ? WIDEST_LINE : Math.max(length, width);
  const part = onLine ? `a line is, ${WIDEST_LINE * 1e3} mm at most` : `the pan is, ${most * 1e3} mm`;
  const no = (value: number, field: string, what: string, example: string) =>
    want(!(value > most), `leak.${field}`, `${what} no wider than ${part}`, millimetres(value), example);
  if (opening.kind === "hole") no(opening.diameter, "diameter", "a hole", '"0.4 mm"');
  if (opening.kind === "pit" && onLine) no(opening.bore, "bore", "a bore", '"8 mm"');
  if (opening.kind === "crack" || opening.kind === "rub")
    no(opening.tubeDiameter, "tubeDiameter", "a tube", '"10 mm"');
}

function fluid({ fluid: { viscosity } }: PlainCase, { want }: FaultList): void {
  const points = viscosity
    .map((point, i) => ({ ...point, path: `fluid.viscosity[${i}]` }))
    .sort((one, other) => one.temperature - other.temperature);
  points.slice(1).forEach((point, i) => {
    const colder = points[i]!;
    want(
      point.temperature !== colder.temperature,
      `${point.path}.temperature`,
      "a temperature of its own",
      "the same twice",
    );
    want(
      !(point.temperature > colder.temperature && point.kinematic >= colder.kinematic),
      `${point.path}.kinematic`,
      "a viscosity below that at the colder point",
      `${point.kinematic * 1e6} mm2/s`,
      '"7.3 mm2/s"',
    );
  });
}

type Opening = NonNullable<PlainCase["leak"]>;

const millimetres = (value: number): string => `${value * 1e3} mm`;

function leak(opening: Opening, { want }: FaultList): void {
  const onLine = opening.place === "supply-line" || opening.place === "return-line";
  const thinWall = ({ wall, tubeDiameter }: Extract<Opening, { tubeDiameter: number }>) =>
    want(
      !(wall >= tubeDiameter / 2),
      "leak.wall",
      "a wall thinner than the tube's radius",
      millimetres(wall),
      '"0.9 mm"',
    );
  want(
    onLine || opening.place === "pan" || !(opening.lineAbove > 0),
    "leak.lineAbove",
    "nothing: no line stands over a seam or a shaft's seal",
    `${opening.lineAbove * 1e3} L`,
    '"0 mL"',
  );
  switch (opening.kind) {
    case "hole":
      return;
    case "slot":
      want(
        !(opening.gap > opening.length),
        "leak.gap",
        "a gap no higher than long",
        millimetres(opening.gap),
        '"20 um"',
      );
      return;
    case "seal":
      want(
        !(opening.finalClearance < opening.clearance),
        "leak.finalClearance",
        "no smaller clearance than the first: a seal does not heal",
        `${opening.finalClearance * 1e6} um`,
        '"30 um"',
      );
      want(
        !(opening.finalClearance >= opening.diameter / 2),
        "leak.finalClearance",
        "a clearance smaller than the fitting",
        millimetres(opening.finalClearance),
        '"0.03 mm"',
      );
      return;
    case "seep":
      want(
        !(opening.finalDrops < opening.drops),
        "leak.finalDrops",
        "no fewer drops than at first: a seal does not heal",
        `${opening.finalDrops} drops/min`,
        '"60 drops/min"',
      );
      return;
    case "crack":
      want(
        !(opening.partsAtLength <= opening.length),
        "leak.partsAtLength",
        "a length above the first one",
        millimetres(opening.partsAtLength),
        '"12 mm"',
      );
      want(
        !(opening.partsAtLength > Math.PI * opening.tubeDiameter),
        "leak.partsAtLength",
        "no more than once around the tube",
        millimetres(opening.partsAtLength),
        '"12 mm"',
      );
      thinWall(opening);
      return;
    case "pit":
      want(
        !(opening.diameter > opening.bore),
        "leak.diameter",
        "a mouth no wider than the bore",
        millimetres(opening.diameter),
        '"0.3 mm"',
      );
      return;
    case "rub":
      want(onLine, "leak.place", "a line: only a tube is rubbed flat", opening.place, '"return-line"');
      thinWall(opening);
      want(
        !(opening.wornInHundredHours > opening.tubeDiameter / 2),
        "leak.wornInHundredHours",
        "no more than half the tube",
        millimetres(opening.wornInHundredHours),
        '"0.1 mm"',
      );
      want(
        opening.wornAtStart === undefined || !(opening.wornAtStart > opening.wall),
        "leak.wornAtStart",
        "no more than the wall",
        `${(opening.wornAtStart ?? 0) * 1e3} mm`,
        '"0.4 mm"',
      );
  }
}

function dates(tree: PlainCase, there: (path: string) => boolean, { want }: FaultList): void {
  const { start, span } = tree;
  const known = !Number.isNaN(dateSeconds(start.date)) && !start.date.includes(":");
  want(known, "start.date", "a date; the case begins at its midnight", given(start.date), '"2024-03-04"');

  if (there("opens")) {
    const { opens } = tree;
    if ("date" in opens) {
      const after = sinceStart(tree, opens.date);
      want(
        !Number.isNaN(dateSeconds(opens.date)),
        "opens.date",
        dateExpected,
        given(opens.date),
        dateExample,
      );
      want(
        !(after < 0),
        "opens.date",
        `a date from ${start.date} on, when the case starts`,
        given(opens.date),
        dateExample,
      );
      want(!(after > span), "opens.date", "a date before the span ends", given(opens.date), dateExample);
    }
    if ("after" in opens)
      want(
        !(opens.after > span),
        "opens.after",
        "a time before the span ends",
        `${opens.after} s`,
        '"30 days"',
      );
    if ("odometer" in opens)
      want(
        !(opens.odometer < start.odometer),
        "opens.odometer",
        "no less than the odometer at the start",
        `${opens.odometer / 1e3} km`,
        '"60200 mi"',
      );
  }
  if (there("towed") && tree.towed !== undefined) {
    const { from, until } = tree.towed;
    const begins = sinceStart(tree, from ?? start.date);
    const ends = lastSecond(until ?? start.date) - dateSeconds(start.date);
    if (from !== undefined)
      want(!Number.isNaN(begins) || !known, "towed.from", dateExpected, given(from), dateExample);
    if (until !== undefined) {
      want(!Number.isNaN(ends) || !known, "towed.until", dateExpected, given(until), dateExample);
      want(!(ends < begins), "towed.until", "a date no earlier than towed.from", given(until), dateExample);
    }
  }
  if (!there("entries")) return;
  tree.entries.forEach(({ date }, i) => {
    const path = `entries[${i}].date`;
    const after = sinceStart(tree, date);
    want(!Number.isNaN(dateSeconds(date)), path, dateExpected, given(date), dateExample);
    want(!(after < 0), path, `a date from ${start.date} on, when the case starts`, given(date), dateExample);
    want(!(after > span), path, "a date before the span ends", given(date), dateExample);
    const before = tree.entries[i - 1];
    want(
      !(before !== undefined && after < sinceStart(tree, before.date)),
      path,
      "entries in the order of their dates",
      given(date),
      dateExample,
    );
  });
}
