import { expose } from "comlink";
import { earlyAnswer, type EarlyAnswer } from "../../../src/lookback/early.ts";
import type { Works } from "../parts/job.ts";
import { readFacts, type Facts } from "./facts.ts";

const works: Works<Facts, EarlyAnswer> = {
  run(facts) {
    const { visit, beliefs, seed } = readFacts(facts);
    return earlyAnswer(visit, seed, beliefs);
  },
};

expose(works);
