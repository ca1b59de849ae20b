import fc from "fast-check";
import { expect, test } from "vitest";
import { placeFlags, span, type Flag } from "../../src/plots/flags.ts";

const flag = fc.record({
  at: fc.double({ min: 0, max: 100, noNaN: true }),
  says: fc.string({ minLength: 3, maxLength: 24 }),
  grave: fc.boolean(),
});
const onto = (width: number) => (at: number) => 40 + (at * (width - 50)) / 100;

test("labels on one row never touch, whatever happened when", () => {
  fc.assert(
    fc.property(fc.array(flag, { maxLength: 25 }), fc.integer({ min: 300, max: 1500 }), (flags, width) => {
      const placed = placeFlags(flags, onto(width), 2, width - 2);
      expect(placed).toHaveLength(flags.length);
      for (const one of placed)
        for (const other of placed) {
          if (one === other || one.row !== other.row) continue;
          const [[a, b], [c, d]] = [span(one), span(other)];
          expect(b <= c || d <= a).toBe(true);
        }
    }),
  );
});

test("a pole runs through no label that flies from the same side", () => {
  fc.assert(
    fc.property(fc.array(flag, { maxLength: 25 }), fc.integer({ min: 300, max: 1500 }), (flags, width) => {
      const placed = placeFlags(flags, onto(width), 2, width - 2);
      for (const label of placed) {
        const [from, to] = span(label);
        for (const pole of placed)
          if (pole.side === label.side && pole.x > from && pole.x < to)
            expect(pole.row).toBeLessThan(label.row);
      }
    }),
  );
});

test("labels stay on the sheet where it is wide enough for them", () => {
  fc.assert(
    fc.property(fc.array(flag, { maxLength: 25 }), fc.integer({ min: 420, max: 1500 }), (flags, width) => {
      for (const label of placeFlags(flags, onto(width), 2, width - 2)) {
        const [from, to] = span(label);
        expect(from).toBeGreaterThanOrEqual(-8);
        expect(to).toBeLessThanOrEqual(width + 8);
      }
    }),
  );
});

test("what happens late on a crowded axis stands in a stair, lowest first", () => {
  const flags: Flag[] = ["one", "two", "three"].map((says, i) => ({ at: 99 + i / 10, says, grave: false }));
  const placed = placeFlags([{ at: 5, says: "early", grave: false }, ...flags], onto(1000), 2, 998);
  expect(placed.map(({ says, row, side }) => [says, row, side])).toEqual([
    ["early", 0, "right"],
    ["one", 0, "left"],
    ["two", 1, "left"],
    ["three", 2, "left"],
  ]);
});
