// A history of averages tells which laws it left, as the trip-resolved one of the same plan does: in the air and at the losses that it met.
import { beforeAll, describe, expect, test } from "vitest";
import { nedc } from "../../src/driving/nedc.ts";
import { dutyHistory } from "../../src/duty/history.ts";
import { prepareDuty } from "../../src/duty/prepare.ts";
import type { Prepared } from "../../src/duty/prepared.ts";
import { simulate, type Plan } from "../../src/history/simulate.ts";
import { frictionRange } from "../../src/physics/clutch/friction.ts";
import { viscosityTemperatureRange } from "../../src/physics/fluid/viscosity.ts";
import { annulusRange } from "../../src/physics/leak/annulus.ts";
import { crackGapRange } from "../../src/physics/leak/crack.ts";
import { holeRange } from "../../src/physics/leak/hole.ts";
import type { LeakOpening } from "../../src/physics/build.ts";
import {
  celsius,
  daily,
  days,
  gap,
  hole,
  hours,
  leaking,
  plan,
  steelCrack,
  trace,
  van,
} from "../emerge/van.ts";

const lawsOf = (outside: readonly string[]) => outside.map((line) => line.split(" used at ")[0]!);
const valueOf = (outside: readonly string[], { law }: { law: string }) =>
  Number(/ = (\S+)/.exec(outside.find((line) => line.startsWith(`${law} used`))!)![1]);

/** Two minutes in gear, standing. */
const still = daily(
  trace("still", [
    [0, 0],
    [120, 0],
  ]),
);
const leak = leaking("supply-line", hole(0.1e-3));

describe("by the air", { timeout: 120_000 }, () => {
  /** From -22 degC in January to -14 degC in July: two airs are prepared. */
  const cold = plan({ ...van, leak }, still, celsius(-18));
  const year: Plan = {
    ...cold,
    unit: { ...cold.unit, surroundings: { meanTemperature: celsius(-18), yearlySwing: 3.9 } },
  };
  let prepared: Prepared;
  beforeAll(() => {
    prepared = prepareDuty(year.unit, year.week)!;
  }, 120_000);

  test.each<[string, number, boolean]>([
    ["a summer keeps to the viscosity line, which starts at -20 degC", 150, false],
    ["a winter leaves the viscosity line", 320, true],
  ])("%s: both histories tell the same laws", (_, dayOfYear, leaves) => {
    const asked = { ...year, dayOfYear, span: days(70) };
    const { outside, handedOver } = dutyHistory(prepared, asked);
    const walked = simulate(asked).outside;
    expect(handedOver).toBe("nothing");
    expect(lawsOf(outside)).toEqual(lawsOf(walked));
    expect(lawsOf(outside).includes(viscosityTemperatureRange.law)).toBe(leaves);
    // The weeks between two prepared airs are told as on a straight line between them; the air of a day is a cosine.
    if (leaves)
      expect(
        Math.abs(valueOf(outside, viscosityTemperatureRange) - valueOf(walked, viscosityTemperatureRange)),
      ).toBeLessThan(0.5);
  });

  test("a week that was sent and kept tells the same", () => {
    const asked = { ...year, dayOfYear: 320, span: days(70) };
    expect(dutyHistory(structuredClone(prepared), asked).outside).toEqual(
      dutyHistory(prepared, asked).outside,
    );
  });
});

describe("by the loss", { timeout: 120_000 }, () => {
  const asked = plan({ ...van, leak: leaking("supply-line", hole(0.2e-3)) }, daily(nedc), celsius(15), {
    span: days(90),
  });
  let prepared: Prepared;
  beforeAll(() => {
    prepared = prepareDuty(asked.unit, asked.week)!;
  }, 120_000);

  test("until it slips no clutch slides faster than paper was measured; who drives on until it is burnt leaves that too, in both histories", () => {
    for (const [plan, slides] of [
      [{ ...asked, span: days(14) }, false],
      [asked, true],
    ] as const) {
      const { outside, handedOver, endedBy } = dutyHistory(prepared, plan);
      const walked = simulate(plan);
      expect(handedOver).toBe("nothing");
      expect(endedBy).toBe(walked.endedBy);
      expect(lawsOf(outside)).toEqual(lawsOf(walked.outside));
      expect(lawsOf(outside).includes(frictionRange.law)).toBe(slides);
    }
  });

  test.each<[string, LeakOpening, string]>([
    ["a hole twenty times as long as wide", hole(0.045e-3), holeRange.law],
    ["a gap of a tenth of a fitting's diameter", gap(1.3e-3), annulusRange.law],
  ])("%s is told by its own law, whether averaged or handed over", (_, opening, law) => {
    const leaks = {
      ...asked,
      unit: { ...asked.unit, leak: leaking("supply-line", opening) },
      span: days(14),
    };
    const { outside } = dutyHistory(prepared, leaks);
    expect(lawsOf(outside)).toEqual(lawsOf(simulate(leaks).outside));
    expect(lawsOf(outside)).toContain(law);
    const tight = { ...leaks, unit: { ...leaks.unit, leak: null } };
    expect(lawsOf(dutyHistory(prepared, tight).outside)).not.toContain(law);
  });

  test("a line that parts: what was averaged and the end that was walked are told together", () => {
    const crack = steelCrack(6e-3, hours(12)); // its shell parameter is then 5.4, past 5
    const parts = { ...asked, unit: { ...asked.unit, leak: leaking("supply-line", crack) } };
    const { outside, handedOver } = dutyHistory(prepared, parts);
    expect(handedOver).toBe("end");
    expect(lawsOf(outside)).toEqual(lawsOf(simulate(parts).outside));
    expect(lawsOf(outside)).toContain(crackGapRange.law);
  });
});

test("a unit that leaves none tells none: warm, in gear without a shift, filled within the time that its heat is split for", () => {
  const { build } = van;
  const quick = { ...van, build: { ...build, shiftControl: { ...build.shiftControl, targetTime: 0.09 } } };
  const asked = plan({ ...quick, leak }, still, celsius(45), { span: days(30) });
  expect(simulate(asked).outside).toEqual([]);
  const { outside, handedOver } = dutyHistory(prepareDuty(asked.unit, asked.week)!, asked);
  expect(handedOver).toBe("nothing");
  expect(outside).toEqual([]);
});
