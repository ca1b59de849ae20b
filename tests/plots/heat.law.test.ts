import fc from "fast-check";
import { describe, expect, test } from "vitest";
import type { FadeRow } from "../../src/history/fade.ts";
import { slipWindow } from "../../src/physics/clutch/slip.ts";
import { fadeTime, spanText } from "../../src/plots/fade-time.ts";
import { widthOf } from "../../src/plots/ink.ts";
import { slipHeat, slipHeatAgainstPressure, type SlipHeatPicture } from "../../src/plots/slip-heat.ts";
import { drawEach, paper, sound } from "./drawn.ts";

const ring = { outer: 0.078, inner: 0.062 };
const clutch = {
  ...ring,
  name: "forward clutch",
  faces: 10,
  pistonArea: 0.0105,
  spring: 900,
  stroke: 0.0018,
  deadVolume: 12e-6,
  fillOrifice: 0.003,
  fillDischarge: 0.62,
  friction: { base: 0.115, rise: 0.02, riseSpeed: 0.3, slope: -3e-4, heatLoss: 3e-4, reference: 363.15 },
  steelMass: 1.2,
  steelThickness: 0.0018,
  liningThickness: 0.0005,
  coolingArea: 0.03,
};
const data: SlipHeatPicture = {
  clutch,
  friction: 0.12,
  torque: 250,
  outputSpeed: 150,
  freeSpeed: 560,
  at: 120e3,
};

describe("heat against apply pressure", () => {
  test("names axes, regions, kiss and lock, in both systems", () => {
    drawEach(
      (picture) => slipHeatAgainstPressure(data, picture),
      (texts, system) => {
        const [power, pressure] = system === "US" ? ["hp", "psi"] : ["kW", "kPa"];
        expect(texts).toContain(`slip heat [${power}]`);
        expect(texts).toContain(`apply pressure [${pressure}]`);
        for (const region of ["released", "partly applied", "fully applied"]) expect(texts).toContain(region);
        expect(texts.join("\n")).toMatch(new RegExp(`kiss \\d+ ${pressure}[^]*lock \\d+ ${pressure}`));
        expect(texts.join(" ")).toMatch(/worst\s*halfway/);
        expect(texts.join(" ")).toMatch(/worst\s*just\s*below\s*lock/);
      },
    );
  });

  test("is drawn for every clutch that its controls can make", () => {
    fc.assert(
      fc.property(
        fc.record({
          torque: fc.double({ min: 20, max: 800, noNaN: true }),
          outputSpeed: fc.double({ min: 0, max: 500, noNaN: true }),
          at: fc.double({ min: 0, max: 2e6, noNaN: true }),
          spring: fc.double({ min: 0, max: 3000, noNaN: true }),
        }),
        ({ spring, ...rest }) => {
          const picture = { system: "SI" as const, width: 360, document: paper() };
          sound(slipHeatAgainstPressure({ ...data, ...rest, clutch: { ...clutch, spring } }, picture), 360);
        },
      ),
      { numRuns: 25 },
    );
  });

  test("both lines are zero up to kiss and from lock, and never negative between", () => {
    const { kiss, lock } = slipWindow(clutch, data.torque, data.friction);
    for (const p of [0, kiss / 2, kiss, lock, 2 * lock])
      expect(Object.values(slipHeat(data, p)).every((heat) => heat < 1e-6)).toBe(true);
    for (let i = 1; i < 20; i++) {
      const { falling, flat } = slipHeat(data, kiss + ((lock - kiss) * i) / 20);
      expect(falling).toBeGreaterThan(0);
      expect(flat).toBeGreaterThan(falling);
    }
  });
});

describe("heat against the time over which the pressure goes", () => {
  const rows: FadeRow[] = [0.05, 0.1, 1, 10, 100, 1000, 3600].flatMap((time) => [
    { time, energy: 200 * time, kind: "falls once" as const },
    { time, energy: time < 1.5 ? 0 : 900 * time, kind: "comes and goes" as const },
  ]);
  const places = [
    { time: 0.1, says: "a valve shuts" },
    { time: 2, says: "a line parts" },
    { time: 3600, says: "a seep" },
  ];
  const heats = [{ energy: 1e5, says: "warms the plates by 200 K" }];

  test("names axes, places and both lines, in both systems", () => {
    drawEach(
      (picture) => fadeTime({ rows, places, heats }, picture),
      (texts, system) => {
        expect(texts).toContain(`slip heat [${system === "US" ? "BTU" : "kJ"}]`);
        expect(texts.join("\n")).toMatch(
          /^time (over which the pressure goes|it takes to go) \[s, min, h\]$/m,
        );
        for (const says of ["falls once", "comes and goes", "0.1 s", "1 min", "1 h"])
          expect(texts).toContain(says);
        for (const { says } of places)
          expect(texts.join(" ").replace(/\s+/g, "")).toContain(says.replaceAll(" ", ""));
      },
    );
  });

  test("places close to each other are named apart, above every line, on a desk and on a phone", () => {
    const near = [
      { time: 0.1, says: "a valve shuts" },
      { time: 0.3, says: "a line parts" },
      { time: 3600, says: "a seep" },
    ];
    for (const width of [336, 760]) {
      const svg = fadeTime({ rows, places: near, heats }, { system: "US", width, document: paper() });
      const boxes = near.map(({ says }) => {
        const text = [...svg.querySelectorAll("text")].find(({ textContent }) => textContent === says)!;
        const [x, y] = ["x", "y"].map((name) => Number(text.getAttribute(name)));
        const wide = widthOf(says);
        return { left: text.getAttribute("text-anchor") === "end" ? x! - wide : x!, wide, y: y! };
      });
      for (const a of boxes)
        for (const b of boxes)
          if (a !== b && a.y === b.y)
            expect(a.left + a.wide <= b.left || b.left + b.wide <= a.left).toBe(true);
      const dots = [...svg.querySelectorAll("circle")].map((dot) => Number(dot.getAttribute("cy")));
      expect(dots.length).toBeGreaterThan(8);
      expect(Math.max(...boxes.map(({ y }) => y))).toBeLessThan(Math.min(...dots));
    }
  });

  test("is drawn when nothing slipped, and when there is nothing", () => {
    for (const some of [[], rows.map((row) => ({ ...row, energy: 0 }))])
      sound(fadeTime({ rows: some, places, heats }, { system: "US", width: 700, document: paper() }), 700);
  });

  test("says spans of time as people do", () => {
    expect([0.1, 10, 60, 600, 3600, 36000].map(spanText)).toEqual([
      "0.1 s",
      "10 s",
      "1 min",
      "10 min",
      "1 h",
      "10 h",
    ]);
  });
});
