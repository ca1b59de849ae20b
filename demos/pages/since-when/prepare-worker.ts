// A week takes tens of seconds to prepare: beside the page, once for every use of the vehicle.

import { expose } from "comlink";
import { prepareDuty } from "../../../src/duty/prepare.ts";
import type { Prepared } from "../../../src/duty/prepared.ts";
import { ambientOn } from "../../../src/history/simulate.ts";
import type { Works } from "../parts/job.ts";
import { readFacts, type Facts } from "./facts.ts";

const DAY = 86400;

const works: Works<Facts, Prepared> = {
  run(facts, tell) {
    const { visit } = readFacts(facts);
    const air = Array.from({ length: Math.ceil(visit.at / DAY) + 1 }, (_, day) =>
      ambientOn(visit.unit, visit.dayOfYear + day),
    );
    const within = { coldest: Math.min(...air), warmest: Math.max(...air) };
    const going = (share: number) => {
      tell({ share, day: 0, lost: 0 });
      return true;
    };
    return prepareDuty(visit.unit, visit.week, going, within)!;
  },
};

expose(works);
