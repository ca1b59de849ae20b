import fc from "fast-check";
import { describe, expect, it } from "vitest";
import * as literal from "../../src/units/literals.ts";
import type { Kind } from "../../src/units/kinds.ts";
import { parseQuantity } from "../../src/units/parse.ts";
import { axis, show, shownKinds, type ShownKind } from "../../src/units/show.ts";

const systems = ["US", "SI"] as const;
// A leak is a flow, told in smaller units; fluid ounces are one word to the reader of text.
const readAs = (kind: ShownKind): Kind => (kind === "leakFlow" ? "flow" : kind);
const readable = (text: string) => text.replace("fl oz", "floz").replace("µm", "um");
const read = (kind: ShownKind, text: string): number => {
  const parsed = parseQuantity(readAs(kind), readable(text));
  return "value" in parsed ? parsed.value : Number.NaN;
};

describe("an SI number as text", () => {
  it.each<[number, ShownKind, "US" | "SI", string]>([
    [448159.224, "pressure", "US", "65 psi (448 kPa)"],
    [448159.224, "pressure", "SI", "448 kPa (65 psi)"],
    [358.15, "temperature", "US", "185 °F (85 °C)"],
    [9.46352946e-4, "volume", "US", "1 qt (0.946 L)"],
    [96560640, "distance", "US", "60000 mi (96561 km)"],
    [100, "torque", "SI", "100 N m (73.8 lb ft)"],
    [40, "dripRate", "US", "40 drops/min"],
    [0, "pressure", "US", "0 psi (0 kPa)"],
    [-0, "pressure", "SI", "0 kPa (0 psi)"],
    [Number.NaN, "pressure", "SI", "unknown"],
    [10, "speed", "US", "22.4 mph (36 km/h)"],
    [0.055, "length", "US", "2.17 in (55 mm)"],
    [42.1e-6, "length", "US", "1.66 thou (0.0421 mm)"],
    [1.07e-6, "length", "SI", "1.07 µm (0.0421 thou)"],
    [5e-6, "volume", "US", "0.169 fl oz (5 mL)"],
    [0.35e-3, "volume", "SI", "0.35 L (0.37 qt)"],
    [0.9e-3, "length", "US", "0.0354 in (0.9 mm)"],
  ])("%d %s %s", (value, kind, system, text) => expect(show(value, kind, system)).toBe(text));

  it("is read back to within its three digits", () => {
    fc.assert(
      fc.property(
        fc.constantFrom(...shownKinds),
        fc.constantFrom(...systems),
        fc.double({ min: 1e-3, max: 1e3, noNaN: true }),
        (kind, system, drawn) => {
          const { factor, offset } = axis(kind, system);
          const value = (drawn - offset) / factor;
          if (kind === "temperature" && value <= 0) return;
          const first = show(value, kind, system).replace(/ \(.*/, "");
          expect(Math.abs(read(kind, first) - value) * factor).toBeLessThanOrEqual(0.0051 * drawn);
        },
      ),
    );
  });
});

describe("a small length", () => {
  it("is told in thousandths of an inch, and reads back as it was", () => {
    for (let metres = 1e-7; metres < 1e-2; metres *= 1.37) {
      const text = show(metres, "length", "US").split(" (")[0]!;
      expect(text.endsWith(" thou")).toBe(metres < 0.254e-3);
      expect(Math.abs(read("length", text) / metres - 1), text).toBeLessThan(5e-3);
    }
    expect(read("length", "40 thou")).toBeCloseTo(1.016e-3, 15);
    expect(read("length", "40 mil")).toBeCloseTo(1.016e-3, 15);
    expect(show(0, "length", "US")).toBe("0 in (0 mm)");
  });
});

describe("axes", () => {
  it("have the same units as text that is read, by a route of their own", () => {
    for (const kind of shownKinds)
      for (const system of systems) {
        const { factor, offset, unit, label } = axis(kind, system);
        expect(label).toContain(`[${unit}]`);
        const value = read(kind, `7 ${unit}`);
        expect(Math.abs((value * factor + offset) / 7 - 1), `${kind} ${unit}`).toBeLessThan(1e-9);
      }
  });
});

describe("literals", () => {
  it.each<[number, Kind, string]>([
    [literal.mm(0.5), "length", "0.5 mm"],
    [literal.micrometres(5), "length", "5 um"],
    [literal.inches(2), "length", "2 in"],
    [literal.kilometres(2), "distance", "2 km"],
    [literal.miles(2), "distance", "2 mi"],
    [literal.litres(2), "volume", "2 L"],
    [literal.millilitres(2), "volume", "2 mL"],
    [literal.quarts(2), "volume", "2 qt"],
    [literal.kPa(2), "pressure", "2 kPa"],
    [literal.psi(2), "pressure", "2 psi"],
    [literal.kmh(2), "speed", "2 km/h"],
    [literal.mph(2), "speed", "2 mph"],
    [literal.rpm(2), "angularSpeed", "2 rpm"],
    [literal.minutes(2), "time", "2 min"],
    [literal.hours(2), "time", "2 h"],
    [literal.days(2), "time", "2 days"],
    [literal.degC(2), "temperature", "2 degC"],
    [literal.degF(2), "temperature", "2 degF"],
  ])("%d is %s %s", (value, kind, text) => {
    const parsed = parseQuantity(kind, text);
    expect("value" in parsed && Math.abs(parsed.value / value - 1)).toBeLessThan(1e-9);
  });
});
