// A week takes tens of seconds to prepare: beside the page, once for every use of the vehicle.

import { expose } from "comlink";
import { prepareDuty } from "../../../src/duty/prepare.ts";
import type { Prepared } from "../../../src/duty/prepared.ts";
import { airOf } from "../../../src/lookback/air.ts";
import type { Works } from "../parts/job.ts";
import { readFacts, type Facts } from "./facts.ts";

const works: Works<Facts, Prepared> = {
  run(facts, tell) {
    const { visit } = readFacts(facts);
    const going = (share: number) => {
      tell({ share, day: 0, lost: 0 });
      return true;
    };
    return prepareDuty(visit.unit, visit.week, going, airOf(visit))!;
  },
};

expose(works);
