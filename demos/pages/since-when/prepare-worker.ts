// A week takes tens of seconds to prepare: beside the page, once for every use of the vehicle.

import { expose } from "comlink";
import { prepareWeek } from "../../../src/duty/prepare-week.ts";
import type { Prepared } from "../../../src/duty/prepared.ts";
import { airOf } from "../../../src/lookback/air.ts";
import type { Works } from "../parts/job.ts";
import { readFacts, type Facts } from "./facts.ts";

const works: Works<Facts, Prepared> = {
  run(facts, tell) {
    const { visit } = readFacts(facts);
    return prepareWeek(visit.unit, visit.week, {
      within: airOf(visit),
      hire: () => new Worker(new URL("../../../src/duty/worker.ts", import.meta.url), { type: "module" }),
      onProgress: (share) => tell({ share, day: 0, lost: 0 }),
    });
  },
};

expose(works);
