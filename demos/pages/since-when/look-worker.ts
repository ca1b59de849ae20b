import { expose } from "comlink";
import type { Prepared } from "../../../src/duty/prepared.ts";
import { answerOf, type Answer } from "../../../src/lookback/answer/answer.ts";
import { lookBack, lookBackHands } from "../../../src/lookback/lookback.ts";
import type { Works } from "../parts/job.ts";
import { readFacts, type Facts } from "./facts.ts";

export interface Question {
  readonly facts: Facts;
  readonly prepared: Prepared;
  readonly guesses: number;
}

// They stay from question to question; who calls one off ends this worker, and them with it.
const hands = lookBackHands({
  hire: () => new Worker(new URL("../../../src/lookback/worker.ts", import.meta.url), { type: "module" }),
});

const works: Works<Question, Answer> = {
  async run({ facts, prepared, guesses }, tell) {
    const { visit, beliefs, seed } = readFacts(facts);
    const posterior = await lookBack(visit, prepared, {
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
