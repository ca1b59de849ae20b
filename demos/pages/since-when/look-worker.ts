import { expose } from "comlink";
import type { Prepared } from "../../../src/duty/prepared.ts";
import { answerOf, type Answer } from "../../../src/lookback/answer/answer.ts";
import { lookBack, lookBackHands } from "../../../src/lookback/lookback.ts";
import type { Works } from "../parts/job.ts";
import { readFacts, type Facts } from "./facts.ts";

export interface Question {
  readonly facts: Facts;
  /** The week, or that it is the one of the question before: it is large. */
  readonly prepared: Prepared | "as before";
  readonly guesses: number;
}

// They stay from question to question; who calls one off ends this worker, and them with it.
const hands = lookBackHands({
  hire: () => new Worker(new URL("../../../src/lookback/worker.ts", import.meta.url), { type: "module" }),
});

let week: Prepared;

const works: Works<Question, Answer> = {
  async run({ facts, prepared, guesses }, tell) {
    const { visit, beliefs, seed } = readFacts(facts);
    if (prepared !== "as before") week = prepared;
    const posterior = await lookBack(visit, week, {
      seed,
      guesses,
      beliefs,
      hands,
      onProgress: (share) => tell({ share, day: 0, lost: 0 }),
    });
    return answerOf(posterior);
  },
};

expose(works);
