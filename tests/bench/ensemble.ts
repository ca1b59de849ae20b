// What an ensemble of the demo case costs, varying the build: wall time on all cores, and processor time of a member.
import { ensemble } from "../../src/ensemble/ensemble.ts";
import { members } from "../../src/ensemble/members.ts";
import { cores } from "../../src/hands/threads.ts";
import { caseData } from "../../src/inputs/files.ts";
import { caseFile } from "../inputs/shipped.ts";
import { cpuTime } from "./clock.ts";

const only = ["build"];
const SEED = 1;

export interface EnsembleCost {
  readonly cores: number;
  /** Members a second, by the clock, on all cores. */
  readonly perSecond: number;
  /** Processor time of a member [s], of all threads, their starting included. */
  readonly each: number;
  /** By the clock, 200 members at that pace [s], measured only when all 200 were run. */
  readonly twoHundred: number;
  /** Time to draw one member [ms]. */
  readonly drawing: number;
}

export async function costOfEnsemble(count: number): Promise<EnsembleCost> {
  const demo = caseData(caseFile("demo"));
  members(demo, 2, SEED, { only });
  const began = cpuTime();
  members(demo, 20, SEED, { only });
  const drawing = (cpuTime() - began) / 20e3;
  const [from, spent] = [performance.now(), cpuTime()];
  await ensemble(demo, { members: count, seed: SEED, only });
  const taken = (performance.now() - from) / 1e3;
  const perSecond = (count + 1) / taken; // the case as written is one more
  return {
    cores: cores(),
    perSecond,
    each: (cpuTime() - spent) / 1e6 / (count + 1),
    twoHundred: 201 / perSecond,
    drawing,
  };
}
