import { expect, test } from "vitest";
import type { Spread } from "../../src/lookback/answer/spread.ts";
import { closeTo } from "../../src/plots/calendar-axes.ts";
import { eventDates } from "../../src/plots/event-dates.ts";
import { lookInterval } from "../../src/plots/look-interval.ts";
import { missingCurve } from "../../src/plots/missing-curve.ts";
import { openingDots } from "../../src/plots/opening-dots.ts";
import { shareBars } from "../../src/plots/share-bars.ts";
import { drawEach, paper } from "./drawn.ts";

const DAY = 86400;
const calendar = { date: "2024-08-05", at: 70 * DAY, distance: 3.2e6, odometer: 96.5e6 };
const when: Spread = { middle: 40 * DAY, half: [33 * DAY, 46 * DAY], nineTenths: [20 * DAY, 60 * DAY] };
const dots = Array.from({ length: 50 }, (_, i) => (20 + (40 * (i + 0.5)) / 50) * DAY);

test("the opening is fifty dots over dates and odometer, whether they lie apart or on one day", () => {
  for (const places of [dots, dots.map(() => 40 * DAY), dots.map((dot) => 40 * DAY + dot / 100)])
    drawEach(
      (picture) => {
        const svg = openingDots({ calendar, dots: places, when }, picture);
        const circles = [...svg.querySelectorAll("circle")];
        expect(circles).toHaveLength(50);
        const height = Number(svg.getAttribute("height"));
        for (const circle of circles) {
          const [y, r] = ["cy", "r"].map((name) => Number(circle.getAttribute(name)));
          expect(y! - r!).toBeGreaterThan(0);
          expect(y! + r!).toBeLessThan(height);
        }
        // No dot lies on another.
        expect(
          new Set(circles.map((circle) => `${circle.getAttribute("cx")} ${circle.getAttribute("cy")}`)).size,
        ).toBe(50);
        return svg;
      },
      (texts, system) => {
        expect(texts).toContain("date, 2024");
        expect(texts).toContain(system === "US" ? "odometer [mi]" : "odometer [km]");
      },
    );
});

test("an opening shortly before the visit is shown close to: by the hour, and what is earlier at the edge", () => {
  const late = closeTo(calendar, 69.5 * DAY);
  expect(late.from).toBeCloseTo(69.25 * DAY, 6);
  expect(closeTo(calendar, 40 * DAY)).toBe(calendar);
  const [from, to] = [16, 760 - 16];
  const svg = openingDots(
    { calendar: late, dots: [10 * DAY, 69.625 * DAY], when },
    { system: "US", width: 760, document: paper() },
  );
  const [early, middle] = [...svg.querySelectorAll("circle")].map((dot) => Number(dot.getAttribute("cx")));
  expect(early).toBeCloseTo(from, 6);
  expect(middle).toBeCloseTo((from + to) / 2, 6);
  expect(svg.textContent).toMatch(/\d+ Oct \d\d:00/);
});

test("without an odometer distances count from the last full", () => {
  drawEach(
    (picture) => openingDots({ calendar: { ...calendar, odometer: null }, dots, when }, picture),
    (texts, system) => {
      expect(texts).toContain(`driven since the last full [${system === "US" ? "mi" : "km"}]`);
      expect(texts).toContain("0");
    },
  );
});

test("where no date has a reading of its own, of a vehicle that stood before the visit, no odometer is drawn nor spoken of", () => {
  drawEach(
    (picture) => openingDots({ calendar: { ...calendar, way: null }, dots, when }, picture),
    (texts) => {
      expect(texts.some((text) => text.startsWith("date"))).toBe(true);
      expect(texts.some((text) => /odometer|driven/.test(text))).toBe(false);
    },
  );
  const svg = openingDots(
    { calendar: { ...calendar, way: null }, dots, when },
    { system: "US", width: 760, document: paper() },
  );
  expect(svg.outerHTML).not.toContain("odometer");
});

test("a dot stands where its date does", () => {
  const width = 760;
  drawEach(
    (picture) => openingDots({ calendar, dots: [0, 35 * DAY, 70 * DAY], when }, picture),
    () => {},
  );
  const [svg] = [
    openingDots({ calendar, dots: [35 * DAY], when }, { system: "US", width, document: paper() }),
  ];
  expect(Number(svg.querySelector("circle")!.getAttribute("cx"))).toBeCloseTo(width / 2, 6);
});

test("events stand in rows over the dates, and one that never came has no band", () => {
  drawEach(
    (picture) =>
      eventDates(
        {
          calendar,
          events: [
            { name: "first spot on the ground", chance: 1, when },
            { name: "damage 1", clutch: "front brake", chance: 0.42, when },
            { name: "no drive", chance: 0.002, when: null },
          ],
        },
        picture,
      ),
    (texts) => {
      for (const text of ["first spot", "front brake burnt", "no drive", "> 99 %", "42 %", "< 1 %"])
        expect(texts).toContain(text);
    },
  );
});

test("what was missing is bands with what was measured on them", () => {
  const at = [0, 35 * DAY, 70 * DAY];
  const bands = at.map(
    (x) =>
      [0.8, 0.9, 1, 1.1, 1.2].map((y) => (y * x * 2e-3) / (70 * DAY)) as unknown as readonly [
        number,
        number,
        number,
        number,
        number,
      ],
  );
  drawEach(
    (picture) =>
      missingCurve(
        { calendar, at, bands, measured: [{ at: 70 * DAY, volume: 2e-3, error: 1e-4 }], added: [50 * DAY] },
        picture,
      ),
    (texts, system) => expect(texts).toContain(`fluid missing [${system === "US" ? "qt" : "L"}]`),
  );
});

test("bars are as long as their values, with a stroke where they were", () => {
  drawEach(
    (picture) => {
      const svg = shareBars(
        {
          says: "Two shares of a whole, with strokes before.",
          bars: [
            { says: "a slow leak", value: 0.8, before: 0.6, aside: "80 %" },
            { says: "a worn pump", value: 0.2, before: 0.1, aside: "20 %" },
          ],
          to: 1,
          label: "share",
          ticks: [
            { at: 0, text: "0 %" },
            { at: 1, text: "100 %" },
          ],
        },
        picture,
      );
      const [long, short] = [...svg.querySelectorAll("rect")].map((bar) => Number(bar.getAttribute("width")));
      expect(long! / short!).toBeCloseTo(4, 6);
      return svg;
    },
    (texts) => expect(texts).toEqual(expect.arrayContaining(["a slow leak", "80 %", "share"])),
  );
});

test("leaks missed by looks: a named line for each kind, over miles and kilometres from nothing", () => {
  const intervals = [1, 2, 3, 4].map((k) => k * 4e6);
  drawEach(
    (picture) => {
      const svg = lookInterval(
        {
          intervals,
          looks: [
            { says: "walk round", missed: [0.6, 0.8, 0.9, 0.95] },
            { says: "shield taken off", missed: [0.2, 0.3, 0.5, 0.7] },
          ],
        },
        picture,
      );
      expect(svg.querySelectorAll('g[stroke-width="2.2"] path')).toHaveLength(2);
      return svg;
    },
    (texts, system) => {
      expect(texts).toContain(`driven between two looks [${system === "US" ? "mi" : "km"}]`);
      expect(texts).toContain("walk round");
      expect(texts).toContain("shield taken off");
    },
  );
});
