// What no transmission can be, although every number by itself could: parts that do not fit each other.

import { told, type Part, type Rule } from "./build-rule.ts";
import { clutchRules } from "./clutch-rules.ts";
import type { FaultList } from "./fault-list.ts";
import { gearRules } from "./gear-rules.ts";
import type { PlainBuild } from "./gears.ts";
import { shiftRules } from "./shift-rules.ts";
import { sumpRules } from "./sump-rules.ts";

/** Adds every contradiction of the parts that are `there`; paths begin with `build.`. */
export function buildContradictions(
  build: Partial<PlainBuild>,
  there: (part: Part) => boolean,
  list: FaultList,
): void {
  const at: FaultList = {
    ...list,
    want: (holds, path, ...words) => list.want(holds, `build.${path}`, ...words),
  };
  for (const { needs, check } of rules) if (needs.every(there)) check(build as PlainBuild, at);
}

const engineAndHeat: readonly Rule[] = [
  {
    needs: ["engine"],
    check({ engine }, { want }) {
      want(
        !(engine.ratedSpeed <= engine.idleSpeed),
        "engine.ratedSpeed",
        `a speed above idle (${told.turning(engine.idleSpeed)})`,
        told.turning(engine.ratedSpeed),
      );
    },
  },
  {
    needs: ["cooler"],
    check({ cooler: { bypassCold, bypassHot } }, { want }) {
      want(
        !(bypassHot <= bypassCold),
        "cooler.bypassHot",
        `a temperature above bypassCold (${told.temperature(bypassCold)})`,
        told.temperature(bypassHot),
        '"80 degC"',
      );
    },
  },
  {
    needs: ["heat"],
    check({ heat: { lubrication: film } }, { want }) {
      want(
        !(film.fullCoefficient < film.airCoefficient),
        "heat.lubrication.fullCoefficient",
        "no less than what air alone does",
        String(film.fullCoefficient),
      );
    },
  },
];

const rules: readonly Rule[] = [...sumpRules, ...clutchRules, ...gearRules, ...shiftRules, ...engineAndHeat];
