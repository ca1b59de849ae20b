// A whole history at the edges of what can be asked of it: no NaN, no infinity, balances close; more hole never loses less,
// less fluid never gives more pressure; nothing at nothing.
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { holdAt, idling } from "../../src/bay/ready.ts";
import { idleInNeutral } from "../../src/history/idle.ts";
import { noEngagement } from "../../src/history/shift.ts";
import { simulate, type History } from "../../src/history/simulate.ts";
import { tick } from "../../src/history/tick.ts";
import { supplyNow } from "../../src/physics/chain.ts";
import type { Leak, LeakOpening, LeakPlace } from "../../src/physics/build.ts";
import { between, decades } from "../between.ts";
import { celsius, daily, days, gap, hole, leaking, named, plan, shipped, trace, taxi, van } from "./van.ts";

const crack = shipped("parting-crack").unit.leak!.opening;
const openings: fc.Arbitrary<LeakOpening> = fc.oneof(
  decades(-5, -1.7).map((diameter) => hole(diameter)),
  decades(-7, -3).map((clearance) => gap(clearance)),
  fc.record({ half: decades(-4, -2.3), after: decades(0, 5) }).map(({ half, after }): LeakOpening => {
    if (crack.kind !== "crack") throw new Error("the case has another leak now");
    return { ...crack, halfLength: half, partsAt: Math.max(1.5 * half, 7e-3), partsAfter: after };
  }),
  fc
    .record({ diameter: decades(-5, -2.5), after: decades(3, 7), exponent: between(0.2, 1) })
    .map((pit): LeakOpening => ({ kind: "pit", ...pit, wall: 0.9e-3, bore: 8e-3 })),
  fc
    .record({
      diameter: decades(-5, -2.5),
      after: decades(3, 7),
      exponent: between(0.2, 1),
      aspect: decades(-1, 1),
    })
    .map((pit): LeakOpening => ({ kind: "pit", ...pit, wall: 0.9e-3, bore: 8e-3 })),
  fc
    .record({ contact: decades(-4, -1.5), depthInHundredHours: decades(-6, -2.4) })
    .map((rub): LeakOpening => ({ kind: "rub", ...rub, tubeRadius: 5e-3, wall: 0.9e-3 })),
);
const places = fc.constantFrom<LeakPlace>("supply-line", "return-line", "pan", "pan-seam", "shaft-seal");
const leaks: fc.Arbitrary<Leak> = fc
  .record({
    opening: openings,
    place: places,
    height: between(0, 0.2),
    above: between(0, 0.3e-3),
    capacity: fc.oneof(fc.constant(0), between(0, 1e-3)),
    carryOff: fc.oneof(fc.constant(0), decades(-6, -2)),
  })
  .map(({ opening, place, height, above, capacity, carryOff }) =>
    leaking(place, opening, {
      height,
      lineAbove: above,
      columnHeight: above > 0 ? 0.2 : 0,
      hiding: { capacity, carryOff },
    }),
  );

/** Half a minute with everything in it: a launch up a hill, turns either way, a hill down, a stop. */
const half = trace("half a minute", [
  [0, 0],
  [2, 0, 0.08],
  [5, 5, 0.08],
  [8, 10, 0.08, 3],
  [12, 10, -0.08, -3],
  [16, 10],
  [18, 4],
  [22, 0],
  [27, 0],
]);
const week = daily(half);

/** Paths of all that is not a finite number, with the columns left out that say "none" by it. */
function odd(value: unknown, path = ""): string[] {
  if (typeof value === "number") return Number.isFinite(value) ? [] : [path];
  if (typeof value !== "object" || value === null) return [];
  return Object.entries(value).flatMap(([key, inner]) => odd(inner, `${path}.${key}`));
}

/** What a history may leave open: a trip without a look at the stick, an instant in which nothing is to be held. */
const none = /^\.trips\.\d+\.(level|leastMargin|leastPressure)$|^\.closeUps\.\d+\.looks\.\d+\.holds$/;

function expectSound(history: History): void {
  expect(odd(history).filter((path) => !none.test(path))).toEqual([]);
  const { mass, leaked, energy } = history.closure;
  expect(Math.max(mass, leaked, energy)).toBeLessThan(1e-9);
  const { end } = history;
  for (const held of [end.mass, end.hidden, end.onRoad, end.onGround, end.inFlight, end.lines, end.converter])
    expect(held).toBeGreaterThanOrEqual(0);
  expect(end.gas).toBeGreaterThanOrEqual(0);
  expect(end.gas).toBeLessThanOrEqual(1);
}

describe("whatever leaks, lacks or freezes", () => {
  it("a history is made of numbers, and closes", () => {
    fc.assert(
      fc.property(
        leaks,
        between(-0.3, 0.999),
        between(celsius(-15), celsius(50)),
        between(0, days(1)),
        fc.constantFrom(van, taxi),
        (leak, share, air, after, unit) => {
          const fillShort = share * unit.build.fill;
          expectSound(
            simulate(plan({ ...unit, leak }, week, air, { span: days(2), fillShort, opens: { after } })),
          );
        },
      ),
      { numRuns: 60 },
    );
  });

  it("and so is a drive of old fluid, spent linings and any temperature", () => {
    fc.assert(
      fc.property(
        between(celsius(-40), celsius(170)),
        between(0, 8e-3),
        between(0, 3),
        fc.array(fc.record({ glaze: between(0, 1), char: between(0, 1), worn: between(0, 1) }), {
          minLength: 8,
          maxLength: 8,
        }),
        (temperature, missing, fluidAge, linings) => {
          const walk = idling(van, missing, temperature);
          const { state } = walk;
          state.fluidAge = fluidAge;
          linings.forEach(({ glaze, char, worn }, i) => {
            state.glaze[i] = glaze;
            state.char[i] = char;
            state.wear[i] = worn * (van.build.clutches[i] ?? van.build.lockUp.clutch).liningThickness;
          });
          const engagement = noEngagement();
          const seen: string[] = [];
          const look = () => {
            const { line, drive, temperature: fluid, viscosity } = walk.now;
            seen.push(...odd({ state, line, drive, fluid, viscosity }));
            return seen.length === 0;
          };
          for (let s = 1; s <= 14; s++)
            tick(walk, 1, Math.min(10, s), s > 7 ? -0.08 : 0.08, 0, engagement, look);
          expect(seen).toEqual([]);
        },
      ),
      { numRuns: 25 },
    );
  });
});

describe("a bigger hole never loses less", () => {
  it("at the same instant", () => {
    fc.assert(
      fc.property(
        decades(-4.5, -2),
        between(1, 3),
        places,
        between(0, 6e-3),
        between(-15, 110),
        (diameter, factor, place, missing, t) => {
          const walk = idling({ ...van, leak: null }, missing, celsius(t));
          walk.state.leakAge = 0;
          const flow = (size: number) => {
            const unit = { ...van, leak: leaking(place, hole(size), { height: 0.01 }) };
            supplyNow(unit, walk.state, van.build.engine.idleSpeed, 0, false, walk.now);
            return walk.now.leakFlow;
          };
          const small = flow(diameter);
          expect(flow(diameter * factor)).toBeGreaterThanOrEqual(small * (1 - 1e-12));
        },
      ),
      { numRuns: 40 },
    );
  });

  it("in a history, while the pump is fed", () => {
    fc.assert(
      fc.property(
        decades(-4.5, -3),
        between(1.01, 3), // nearer to one, the two differ by rounding alone
        places,
        between(-15, 40),
        (diameter, factor, place, t) => {
          const run = (size: number) =>
            simulate(
              plan({ ...van, leak: leaking(place, hole(size), { height: 0.01 }) }, week, celsius(t), {
                span: days(2),
              }),
            );
          const [small, large] = [run(diameter), run(diameter * factor)];
          fc.pre(named(large, "first gulp of air") === undefined);
          expect(large.ledger.massLeaked).toBeGreaterThanOrEqual(small.ledger.massLeaked);
        },
      ),
      { numRuns: 15 },
    );
  });
});

it("less fluid never gives more pressure", () => {
  fc.assert(
    fc.property(
      between(0, 8e-3),
      between(0, 1e-3),
      between(-20, 110),
      between(60, 500),
      (missing, more, t, engineSpeed) => {
        const pressure = (short: number) => {
          const walk = idling(van, short, celsius(t));
          idleInNeutral(walk, 10, engineSpeed, () => holdAt(walk, celsius(t)));
          return walk.now.line.linePressure;
        };
        // The temperature is put back after each step, and wanders within it: the last digits are its own.
        expect(pressure(missing + more)).toBeLessThanOrEqual(pressure(missing) * (1 + 1e-4) + 1);
      },
    ),
    { numRuns: 30 },
  );
});

describe("nothing at nothing", () => {
  it("no leak, no loss; a healthy unit, no slip", () => {
    const { ledger, end, clutches } = simulate(plan(van, week, celsius(10), { span: days(3) }));
    expect(ledger.massLeaked).toBe(0);
    expect(end.hidden + end.onRoad + end.onGround).toBe(0);
    expect(end.mass).toBe(ledger.massFilled);
    for (const { slips } of clutches) expect(slips).toBe(0);
  });

  it("no speed, no slip", () => {
    const still = trace("stands", [
      [0, 0],
      [300, 0],
    ]);
    const { clutches, end } = simulate(plan(van, daily(still), celsius(10), { span: days(1) }));
    expect(end.running).toBeGreaterThan(300);
    expect(end.distance).toBe(0);
    for (const { slips, slipEnergy } of clutches) expect(slips + slipEnergy).toBe(0);
  });

  it("a leak that has not opened loses nothing", () => {
    const leak = leaking("supply-line", hole(2e-3));
    const { ledger } = simulate(
      plan({ ...van, leak }, week, celsius(10), { opens: { after: days(2) }, span: days(2) }),
    );
    expect(ledger.massLeaked).toBe(0);
  });

  it("a week without trips stands, and a parked night of a tight unit changes only its temperature", () => {
    const { end, trips } = simulate(plan(van, { days: Array.from({ length: 7 }, () => []) }, celsius(10)));
    expect(trips).toEqual([]);
    expect(end.running).toBe(0);
    expect(end.distance).toBe(0);
  });
});
