// What a leak must be by itself, and to the pan or the line that it is in.

import { told } from "./build-rule.ts";
import type { PlainCase } from "./case-schema.ts";
import type { FaultList } from "./fault-list.ts";

type Opening = NonNullable<PlainCase["leak"]>;
type Pan = PlainCase["build"]["sump"]["pan"];

/** What an opening of its kind must be. */
export function leakRules(opening: Opening, { want }: FaultList): void {
  const onLine = opening.place === "supply-line" || opening.place === "return-line";
  const thinWall = ({ wall, tubeDiameter }: Extract<Opening, { tubeDiameter: number }>) =>
    want(
      !(wall >= tubeDiameter / 2),
      "leak.wall",
      "a wall thinner than the tube's radius",
      told.length(wall),
      '"0.9 mm"',
    );
  want(
    onLine || opening.place === "pan" || !(opening.lineAbove > 0),
    "leak.lineAbove",
    "nothing: no line stands over a seam or a shaft's seal",
    told.volume(opening.lineAbove),
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
        told.length(opening.gap),
        '"20 um"',
      );
      return;
    case "seal":
      want(
        !(opening.finalClearance < opening.clearance),
        "leak.finalClearance",
        "no smaller clearance than the first: a seal does not heal",
        told.length(opening.finalClearance),
        '"30 um"',
      );
      want(
        !(opening.finalClearance >= opening.diameter / 2),
        "leak.finalClearance",
        "a clearance smaller than the fitting",
        told.length(opening.finalClearance),
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
        told.length(opening.partsAtLength),
        '"12 mm"',
      );
      want(
        !(opening.partsAtLength > Math.PI * opening.tubeDiameter),
        "leak.partsAtLength",
        "no more than once around the tube",
        told.length(opening.partsAtLength),
        '"12 mm"',
      );
      thinWall(opening);
      return;
    case "pit":
      want(
        !(opening.diameter > opening.bore),
        "leak.diameter",
        "a mouth no wider than the bore",
        told.length(opening.diameter),
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
        told.length(opening.wornInHundredHours),
        '"0.1 mm"',
      );
      want(
        opening.wornAtStart === undefined || !(opening.wornAtStart > opening.wall),
        "leak.wornAtStart",
        "no more than the wall",
        told.length(opening.wornAtStart ?? 0),
        '"0.4 mm"',
      );
  }
}

/** A leak of the pan is in it, and none is larger than the part that it is in. */
export function leakFits(opening: Opening, pan: Pan, list: FaultList): void {
  inThePan(opening, pan, list);
  fits(opening, pan, list);
}

function inThePan({ place, height, x, y }: Opening, pan: Pan, { want }: FaultList): void {
  const within = (value: number, most: number, path: string, expected: string) =>
    want(!(value > most), path, expected, told.length(value), '"5 mm"');
  if (place === "pan" || place === "pan-seam")
    within(height, pan.height, "leak.height", "a hole in the pan below its top");
  if (place !== "pan-seam") return;
  within(x, pan.length, "leak.x", "a place of the pan's rail");
  within(y, pan.width, "leak.y", "a place of the pan's rail");
}

/** Wider than any cooler line of a road vehicle [m]. */
const WIDEST_LINE = 0.025;

function fits(opening: Opening, { length, width }: Pan, { want }: FaultList): void {
  const onLine = opening.place === "supply-line" || opening.place === "return-line";
  const most = onLine ? WIDEST_LINE : Math.max(length, width);
  const part = onLine ? `a line is, ${told.length(WIDEST_LINE)} at most` : `the pan is, ${told.length(most)}`;
  const no = (value: number, field: string, what: string, example: string) =>
    want(!(value > most), `leak.${field}`, `${what} no wider than ${part}`, told.length(value), example);
  if (opening.kind === "hole") no(opening.diameter, "diameter", "a hole", '"0.4 mm"');
  if (opening.kind === "pit" && onLine) no(opening.bore, "bore", "a bore", '"8 mm"');
  if (opening.kind === "crack" || opening.kind === "rub")
    no(opening.tubeDiameter, "tubeDiameter", "a tube", '"10 mm"');
}
