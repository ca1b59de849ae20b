// "One second of driving" in DEVELOPERS.md: every bold number there is one that `instant` finds.
import { readFileSync } from "node:fs";
import { join } from "node:path";
import { expect, test } from "vitest";
import { readCase } from "../src/inputs/case.ts";
import { caseData } from "../src/inputs/files.ts";
import { instant } from "../src/physics/chain.ts";
import { newNow } from "../src/physics/now.ts";
import { fresh, storedEnergy } from "../src/physics/state.ts";
import { returnTime } from "../src/physics/sump/holdup.ts";
import { tiltAlong } from "../src/physics/sump/tilt.ts";
import { hours } from "../src/units/literals.ts";
import { caseFile } from "./inputs/shipped.ts";

const text = readFileSync(join(import.meta.dirname, "../DEVELOPERS.md"), "utf8");
const told = text.slice(text.indexOf("## One second of driving"), text.indexOf("## The house"));
const bold = [...told.matchAll(/\*\*([\d. ]+?)(?: ([^\d*][^*]*))?\*\*/g)].map(([, number, unit]) => ({
  number: number!.replaceAll(" ", ""),
  unit: unit ?? "",
}));

/** The second that the text describes: third gear, 13 m/s, a 4 % grade, 0.3 m/s² more each second, 89.5 °C. */
function second() {
  const { unit } = readCase(caseData(caseFile("slow-seep")));
  const { build, fluid } = unit;
  const warm = 89.5 + 273.15;
  const road = { speed: 13, wish: 0.3, grade: 0.04, lateral: 0, ambient: unit.surroundings.meanTemperature };
  const state = {
    ...fresh(unit, warm),
    gear: 2,
    speed: 13,
    coolant: 90 + 273.15,
    running: hours(100),
    leakAge: hours(100),
  };
  state.energy = storedEnergy(build, fluid.density15, state.mass, warm);
  state.slosh[0] = tiltAlong(road.wish, Math.atan(road.grade));
  const now = newNow(build);
  // What is on its way back down is what is thrown off in the time that it takes.
  for (let i = 0; i < 50; i++) {
    instant(unit, state, road, now);
    const time = returnTime(
      build.holdUp.hotReturnTime,
      now.viscosity,
      build.holdUp.hotViscosity,
      build.holdUp.returnExponent,
    );
    const { clutchFlow, feed, relief, leak, lineGas } = now.line;
    state.inFlight = (clutchFlow + feed - relief - leak) * (1 - lineGas) * time;
    state.gas = now.gasDrawn;
  }
  return now;
}

test("the numbers of one second of driving are those that the chain finds", () => {
  const now = second();
  const { drive, line } = now;
  const perMinute = 6e4; // L/min
  const found: readonly (readonly [value: number, unit: string])[] = [
    [drive.wheelForce, "N"],
    [drive.turbineTorque, "N m"],
    [drive.turbine, "rad/s"],
    [drive.engine, "rad/s"],
    [now.converterHeat / 1e3, "kW"],
    [now.setPoint / 1e3, "kPa"],
    [now.viscosity * 1e3, "mPa s"],
    [now.density, "kg/m³"],
    [now.panVolume * 1e3, "L"],
    [now.panDepth * 1e3, "mm"],
    [now.submergence * 1e3, "mm"],
    [line.drawn * perMinute, "L/min"],
    [line.delivered * perMinute, "L/min"],
    [line.clutchFlow * perMinute, ""],
    [line.feed * perMinute, ""],
    [line.spill * perMinute, ""],
    [line.leakPressure / 1e3, "kPa"],
    [now.leakFlow * 6e7, "mL/min"],
    [now.holds, "N m"],
    [now.gearHeat / 1e3, "kW"],
    [now.pumpHeat / 1e3, "kW"],
  ];
  expect(bold.map(({ unit }) => unit)).toEqual(found.map(([, unit]) => unit));
  found.forEach(([value, unit], i) => {
    const { number } = bold[i]!;
    const digits = number.split(".")[1]?.length ?? 0;
    expect(value.toFixed(digits), `bold number ${i + 1} [${unit}]`).toBe(number);
  });
  expect(line.linePressure).toBeCloseTo(now.setPoint, 3);
});
