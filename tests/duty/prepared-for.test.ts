// A week prepared for one unit and its driving is not asked about another one.
import { expect, test } from "vitest";
import { nedc } from "../../src/driving/nedc.ts";
import { clock, weekOf, workdays, type Week } from "../../src/driving/pattern.ts";
import { dutyHistory } from "../../src/duty/history.ts";
import { prepareDuty } from "../../src/duty/prepare.ts";
import { prepareWeek } from "../../src/duty/prepare-week.ts";
import { prepareLoss } from "../../src/duty/prepare-loss.ts";
import { isCoded } from "../../src/errors.ts";
import type { Unit } from "../../src/physics/build.ts";
import { lookBack } from "../../src/lookback/lookback.ts";
import { celsius, plan, van } from "../emerge/van.ts";
import { lossShop } from "../lookback/grown-otherwise.ts";

const week = weekOf([{ trace: nedc, startsAt: clock(7), days: workdays }]);
const air = celsius(15);
const prepared = prepareLoss(van, week, air);
const asks = plan(van, week, air);

const never = () => false;
const refused = (run: () => unknown): string => {
  try {
    run();
    return "nothing";
  } catch (error) {
    return isCoded(error) ? error.message : "no coded error";
  }
};

test("its own, also once more as plain data, is answered", () => {
  expect(refused(() => dutyHistory(prepared, asks))).toBe("nothing");
  expect(refused(() => dutyHistory(structuredClone(prepared), asks))).toBe("nothing");
});

test.each([
  ["another build", { ...van, build: { ...van.build, fill: 1.01 * van.build.fill } }, week, "another build"],
  ["another fluid", { ...van, fluid: { ...van.fluid, density15: 860.5 } }, week, "another fluid"],
  [
    "a heavier foot",
    { ...van, driver: { ...van.driver, pressOn: 2 * van.driver.pressOn } },
    week,
    "another foot",
  ],
  ["an hour later", van, weekOf([{ trace: nedc, startsAt: clock(8), days: workdays }]), "other trips"],
  ["a day less", van, weekOf([{ trace: nedc, startsAt: clock(7), days: [0, 1, 2] }]), "other trips"],
])("%s is refused by name", (_, unit, other, says) => {
  const said = refused(() => dutyHistory(prepared, plan(unit, other, air)));
  expect(said).toContain("prepared");
  expect(said).toContain(says);
});

test.each<[string, Parameters<typeof prepareDuty>, string]>([
  ["no build", [{} as Unit, week], "unit.build"],
  ["no surroundings", [{ build: van.build } as Unit, week], "coldest air"],
  ["no days", [van, {} as Week], "week.days"],
  ["air that is no number", [van, week, never, { coldest: Number.NaN, warmest: air }], "coldest air"],
  ["air below nothing", [van, week, never, { coldest: -3, warmest: air }], "coldest air"],
  [
    "the warmest colder than the coldest",
    [van, week, never, { coldest: air, warmest: air - 1 }],
    "warmest air",
  ],
])(
  "%s: nothing is prepared, and a coded error says what is wanted, from one core or all",
  async (_, asked, says) => {
    expect(refused(() => prepareDuty(...asked))).toContain(says);
    const [unit, other, , within] = asked;
    await expect(prepareWeek(unit, other, within === undefined ? {} : { within })).rejects.toThrow(says);
  },
);

test("a visit is not looked back at with the week of another", async () => {
  const { visit } = lossShop();
  await expect(lookBack({ ...visit, week }, lossShop().prepared, { seed: 1 })).rejects.toThrow("other trips");
});
