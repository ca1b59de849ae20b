// A guess's own moments, between which the curve of what is missing is drawn: those by which the told shares of its loss were gone, the opening first.
import { beforeAll, expect, test } from "vitest";
import { coordinateAt, valueAt } from "../../src/chance/belief.ts";
import { randomBits } from "../../src/chance/random.ts";
import { explanationsOf } from "../../src/lookback/causes.ts";
import { columnsOf, foretell, OWN } from "../../src/lookback/foretell.ts";
import { askedOf, benchOf, type Bench } from "../../src/lookback/question.ts";
import { missingAt } from "../../src/lookback/terms.ts";
import type { Visit } from "../../src/lookback/visit.ts";
import { celsius, days } from "../emerge/van.ts";
import { lossShop } from "./grown-otherwise.ts";

let shop: Bench;
beforeAll(() => {
  shop = lossShop();
});

/** Guesses of every explanation, drawn from what is believed. */
const DRAWS = 30;
/** Shares that the moments between the opening and the visit stand for. */
const shares = [0.1, 0.3, 0.5, 0.7, 0.85, 0.95, 0.99];
/** A moment in a stand is right to a hundredth of a second of the plan's clock, of which the visit's may take two. */
const NEAR = 0.02;

const poured = { at: days(50), volume: 0.5e-3, error: 0, temperature: celsius(20), by: "the shop" };
const visits: Readonly<Record<string, Partial<Visit>>> = {
  "as it was filled": {},
  "topped up on the way": { added: [poured, { ...poured, at: days(90) }] },
  "with the miles alone": { undated: true, driven: { from: 0, to: 900e3 } },
};

test.each(Object.entries(visits))("a vehicle %s", (_, more) => {
  const visit: Visit = { ...shop.visit, ...more };
  const bench = benchOf(visit, shop.prepared, shop.shown);
  const names = columnsOf(bench);
  let leaked = 0;
  for (const [e, explanation] of explanationsOf(visit).entries()) {
    const { unknowns } = explanation;
    const random = randomBits(1, e);
    const values = Float64Array.from({ length: DRAWS * unknowns.length }, (_, i) => {
      const { belief } = unknowns[i % unknowns.length]!;
      return valueAt(belief, coordinateAt(belief, random() + 2 ** -33));
    });
    const rows = foretell(bench, explanation, { values, count: DRAWS, dimensions: unknowns.length });
    for (let g = 0; g < DRAWS; g++) {
      const row = rows.subarray(g * names.length, (g + 1) * names.length);
      const moments = Array.from({ length: OWN }, (_, i) => row[names.indexOf(`own moment ${i}`)]!);
      const missing = Array.from({ length: OWN }, (_, i) => row[names.indexOf(`own missing ${i}`)]!);
      const asked = askedOf(
        bench,
        explanation,
        values.subarray(g * unknowns.length, (g + 1) * unknowns.length),
      );
      expect(missing).toEqual(moments.map((moment) => missingAt(asked, moment)));
      const { lostBy } = asked.course();
      const first = Math.min(visit.at, Math.max(0, asked.opensAt));
      const all = lostBy(visit.at) - lostBy(first);
      if (!(all > 0)) {
        expect(moments.every((moment) => moment === visit.at)).toBe(true);
        continue;
      }
      leaked++;
      expect(moments[0]).toBe(first);
      expect(moments.at(-1)).toBe(visit.at);
      shares.forEach((share, k) => {
        const wanted = lostBy(first) + share * all;
        const moment = moments[k + 1]!;
        expect(moment).toBeGreaterThanOrEqual(moments[k]!);
        expect(moment).toBeLessThanOrEqual(visit.at);
        expect(lostBy(moment + 1e-5)).toBeGreaterThan(wanted * (1 - 1e-9));
        if (moment - NEAR > first) expect(lostBy(moment - NEAR)).toBeLessThan(wanted * (1 + 1e-9));
      });
    }
  }
  expect(leaked).toBeGreaterThan(4 * DRAWS);
});
