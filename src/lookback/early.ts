// An early answer, from the loss alone and before any week is prepared: when did it open, roughly.

import { prepareLoss } from "../duty/prepare-loss.ts";
import { ambientOn } from "../history/simulate.ts";
import { normal, pooled } from "./answer/pool.ts";
import { sorted, spreadOf, type Spread } from "./answer/spread.ts";
import { explanationsOf, type Beliefs } from "./causes.ts";
import { place } from "./common.ts";
import { benchOf, problemOf } from "./question.ts";
import { temperedAnswer } from "./sampler/tempered.ts";
import { warmUp } from "./sampler/warm-up.ts";
import { shownBy } from "./shown.ts";
import { isDear } from "./terms.ts";
import type { Visit } from "./visit.ts";
import { weigh } from "./weigh.ts";

export interface EarlyAnswer {
  /** When the leak opened [s of the visit's clock], if it was a leak that grew unseen. */
  readonly opened: Spread;
  /** Evidence that was left out: it hangs on more than on what is lost. */
  readonly leftOut: readonly string[];
}

const GUESSES = 100;
/** Points of the tables of what the unit shows: enough for a rough answer. */
const POINTS = 5;
/** Levels of the week's tables: what a full unit loses will do for it. */
const LEVELS = 1;
const DAY = 86400;

/**
 * The opening date from what is missing, what drips and what was last known full, with the air as it was in the middle of the time. The leak
 * is taken for one that grew unseen; what the loss did to the unit is not asked, nor whether it would still have driven.
 */
export function earlyAnswer(visit: Visit, seed: number, beliefs: Beliefs = {}): EarlyAnswer {
  const { unit, week, site, dayOfYear, at } = visit;
  const evidence = visit.evidence.filter((item) => !isDear(item));
  const prepared = prepareLoss(unit, week, ambientOn(unit, dayOfYear + at / 2 / DAY), LEVELS);
  const bench = benchOf(visit, prepared, shownBy(unit, site, evidence, POINTS));
  const slow = explanationsOf(visit, beliefs).filter(({ cause }) => cause === "slow leak");
  const problems = slow.map((explanation) => {
    const { further: _, ...cheap } = problemOf(bench, explanation, evidence);
    return cheap;
  });
  problems.forEach(warmUp);
  const done = problems.map((problem, i) => {
    const options = { guesses: GUESSES, moves: 1, seed };
    const answer = temperedAnswer(problem, options);
    return {
      task: { explanation: i, foretells: false, ...options },
      answered: { answer, foretold: new Float64Array(0) },
    };
  });
  const ages = normal(
    pooled(weigh(bench, slow, done), ({ runs }, r, row) => {
      const { values, dimensions } = runs[r]!.answer;
      const age = values[row * dimensions + place.age]!;
      return visit.undated === true ? age / values[row * dimensions + place.use]! : age;
    }),
  );
  return {
    opened: spreadOf(
      sorted(
        ages.values.map((age) => at - age),
        ages.weights,
      ),
    ),
    leftOut: visit.evidence.filter(isDear).map(({ name }) => name),
  };
}
