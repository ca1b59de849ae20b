// What contradicts itself outside the build: the fluid, the leak and the dates.

import { told } from "./build-rule.ts";
import type { PlainCase } from "./case-schema.ts";
import { dateRules } from "./date-rules.ts";
import type { FaultList } from "./fault-list.ts";
import { leakFits, leakRules } from "./leak-rules.ts";

/** Adds every contradiction of the parts that are `there`. A number that could not be read passes every rule. */
export function caseContradictions(tree: PlainCase, there: (path: string) => boolean, list: FaultList): void {
  if (there("fluid")) fluid(tree, list);
  if (there("leak") && tree.leak !== null) leakRules(tree.leak, list);
  if (there("leak") && tree.leak !== null && there("build.sump"))
    leakFits(tree.leak, tree.build.sump.pan, list);
  if (there("leak") && tree.leak?.kind === "rub" && tree.leak.wornAtStart !== undefined && there("opens"))
    list.want(
      "after" in tree.opens && !(tree.opens.after > 0),
      "opens",
      "nothing, when leak.wornAtStart says when the wall is through",
      "another moment",
    );
  if (there("fillShort") && there("build.fill"))
    list.want(
      !(tree.fillShort >= tree.build.fill),
      "fillShort",
      `less than the fill (${told.volume(tree.build.fill)})`,
      told.volume(tree.fillShort),
      '"1 qt"',
    );
  if (there("start")) dateRules(tree, there, list);
}

function fluid({ fluid: { viscosity } }: PlainCase, { want }: FaultList): void {
  const points = viscosity
    .map((point, i) => ({ ...point, path: `fluid.viscosity[${i}]` }))
    .sort((one, other) => one.temperature - other.temperature);
  points.slice(1).forEach((point, i) => {
    const colder = points[i]!;
    want(
      point.temperature !== colder.temperature,
      `${point.path}.temperature`,
      "a temperature of its own",
      "the same twice",
    );
    want(
      !(point.temperature > colder.temperature && point.kinematic >= colder.kinematic),
      `${point.path}.kinematic`,
      "a viscosity below that at the colder point",
      `${point.kinematic * 1e6} mm2/s`,
      '"7.3 mm2/s"',
    );
  });
}
