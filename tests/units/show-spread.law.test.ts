// An interval as text: what its digits may and may not say. No outside number: the rule is the library's own, and stands in its docstring.
import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { inputText } from "../../demos/report/input-words.ts";
import { lastPlace, showSpread, toPlace } from "../../src/units/show-spread.ts";
import { axis, shownKinds } from "../../src/units/show.ts";

const quart = 0.946352946e-3;

describe("the digits of an interval", () => {
  test("are worth a third to a thirtieth of its width, for any width", () => {
    fc.assert(
      fc.property(fc.double({ min: 1e-9, max: 1e9, noNaN: true }), (width) => {
        const steps = width / lastPlace(width);
        expect(steps).toBeGreaterThanOrEqual(3 * (1 - 1e-9));
        expect(steps).toBeLessThan(30 * (1 + 1e-9));
      }),
    );
  });

  test("are no finer than what is read, however narrow it is", () => {
    expect(lastPlace(0.2, 1)).toBe(1);
    expect(lastPlace(0, 1)).toBe(1);
    expect(lastPlace(70, 1)).toBe(10);
  });

  test("a width below 0 is refused", () => {
    expect(() => lastPlace(-1)).toThrow(/width/);
  });

  test("round a value above 0 by half their last place at most, and by no more than half of its first figure: none is told as 0", () => {
    const value = fc.double({ min: 1e-6, max: 1e6, noNaN: true });
    fc.assert(
      fc.property(value, value, (a, b) => {
        fc.pre(Math.abs(a - b) > 1e-6 * a);
        const place = lastPlace(Math.abs(a - b));
        toPlace([a, b], place).forEach((text, i) => {
          const [was, reads] = [[a, b][i]!, Number(text)];
          expect(reads).toBeGreaterThan(0);
          const figure = 10 ** Math.floor(Math.log10(was) + 1e-9);
          expect(Math.abs(reads - was)).toBeLessThanOrEqual(
            0.5 * Math.min(place, figure) * (1 + 1e-6) + 1e-9 * was,
          );
        });
      }),
    );
  });

  test("never turn the order of two values, in any kind and system", () => {
    fc.assert(
      fc.property(
        fc.constantFrom(...shownKinds),
        fc.constantFrom("US" as const, "SI" as const),
        fc.array(fc.double({ min: 1e-6, max: 1e3, noNaN: true }), { minLength: 3, maxLength: 3 }),
        (kind, system, drawn) => {
          const { factor, offset } = axis(kind, system);
          const [low, middle, high] = drawn
            .sort((a, b) => a - b)
            .map((value) => (value - offset) / factor) as [number, number, number];
          const [m, l, h] = showSpread({ middle, nineTenths: [low, high] }, kind, system).texts.map(
            Number,
          ) as [number, number, number];
          expect(l).toBeLessThanOrEqual(m);
          expect(m).toBeLessThanOrEqual(h);
        },
      ),
    );
  });
});

describe("an interval in the reader's units", () => {
  test.each([
    [5.04, 4.87, 5.2, "5.0 4.9 5.2 qt"],
    [2.18, 1.96, 2.44, "2.2 2.0 2.4 qt"],
    [0.0415, -0.792, 0.919, "0 -0.8 0.9 qt"],
    // A twentieth of a quart and less is told as a cup reads it.
    [0.00528, 0.000665, 0.042, "0.2 0.02 1.3 fl oz"],
  ])("%d (%d to %d) qt", (middle, low, high, told) => {
    const { texts, unit } = showSpread(
      { middle: middle * quart, nineTenths: [low * quart, high * quart] },
      "volume",
      "US",
    );
    expect(`${texts.join(" ")} ${unit}`).toBe(told);
  });

  test("an interval without width has no place of its own; a place of nothing is refused", () => {
    const { texts } = showSpread({ middle: 5e-3, nineTenths: [5e-3, 5e-3] }, "volume", "SI");
    expect(texts).toEqual(["5.00", "5.00", "5.00"]);
    expect(() => toPlace([5, 5], lastPlace(0))).toThrow("place");
  });

  test("a range of an input whose ends are one number is told as that number", () => {
    const sourced = { text: "1 L", value: 1e-3, unit: "m3", whole: false, origin: null, range: null };
    const told = (...ends: number[]) => inputText("fill", sourced, ends, "SI");
    expect(told(1e-3, 1e-3)).toBe(told(1e-3));
    expect(told(1e-3, 1e-3)).not.toContain("NaN");
  });

  test("a hole of hundredths of a millimetre, from a narrow and from a wide interval", () => {
    const say = (system: "US" | "SI", ...mm: [number, number, number]) => {
      const [m, l, h] = mm.map((value) => value * 1e-3) as [number, number, number];
      const { texts, unit } = showSpread({ middle: m, nineTenths: [l, h] }, "length", system);
      return `${texts.join(" ")} ${unit}`;
    };
    expect(say("SI", 0.135, 0.124, 0.149)).toBe("0.135 0.124 0.149 mm");
    expect(say("US", 0.135, 0.124, 0.149)).toBe("5.3 4.9 5.9 thou");
    expect(say("SI", 0.0012, 0.0003, 0.004)).toBe("1 0.3 4 µm");
  });
});
