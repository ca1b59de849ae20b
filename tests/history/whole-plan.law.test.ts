import { describe, expect, it } from "vitest";
import { simulate, type Plan } from "../../src/history/simulate.ts";
import { readCase } from "../../src/inputs/case.ts";
import { planOf } from "../../src/inputs/plan.ts";
import { changed, faultsOf } from "../inputs/shipped.ts";

describe("a plan from untyped code", () => {
  const plan = { ...planOf(readCase(changed())), span: 3600 };
  const faults = (data: unknown) => faultsOf(() => simulate(data as Plan));

  it.each(["unit", "week", "weekday", "dayOfYear", "opens", "topUps", "span"] as const)(
    "without its %s is refused by that name, not by a TypeError",
    (part) => {
      const { [part]: _, ...rest } = plan;
      expect(faults(rest)).toMatchObject([{ path: `plan.${part}`, given: "nothing" }]);
    },
  );

  it.each(["build", "fluid", "driver", "surroundings"] as const)("nor without the unit's %s", (part) => {
    const { [part]: _, ...unit } = plan.unit;
    expect(faults({ ...plan, unit })).toMatchObject([{ path: `plan.unit.${part}` }]);
  });

  it("that is nothing at all lacks its unit first", () => {
    for (const data of [{}, null, undefined, 3, "plan"])
      expect(faults(data)).toMatchObject([{ path: "plan.unit" }]);
  });

  it("that is whole runs, a sound unit too", () => {
    expect(simulate(plan).endedBy).toBe("end of span");
    expect(simulate({ ...plan, unit: { ...plan.unit, leak: null } }).endedBy).toBe("end of span");
  });
});
