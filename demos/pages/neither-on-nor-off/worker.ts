// The page's second pair of hands: histories and fades are computed here, so that the page stays free.

import { expose } from "comlink";
import type { Step, Works } from "../parts/job.ts";
import { told, type Told } from "./sticks.ts";
import { historyOf, type Settings } from "./van.ts";

/** Share of the fill that is lost when a van of this kind has come to a stand: only for the progress bar. */
const OFTEN_LOST = 0.3;

const works: Works<Settings, Told> = {
  run(settings, tell) {
    let filled = 0;
    const history = historyOf(settings, (share, state) => {
      filled ||= state.mass;
      const lost = state.hidden + state.onRoad + state.onGround;
      const step: Step = {
        share: Math.max(share, lost / (OFTEN_LOST * filled)),
        day: Math.round(state.clock / 86400),
        lost,
      };
      tell({ ...step, share: Math.min(0.99, step.share) });
      return true;
    });
    return told(settings, history);
  },
};

expose(works);
