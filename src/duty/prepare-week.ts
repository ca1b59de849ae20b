// A week prepared on all cores: each air is walked by whoever is free, and the parts are put together as `prepareDuty` does.

import type { Week } from "../driving/pattern.ts";
import { impossible } from "../errors.ts";
import { crewOf } from "../hands/crew.ts";
import { ownHands, webHands, type Hand } from "../hands/hands.ts";
import { signalled } from "../hands/signalled.ts";
import { cores, threads } from "../hands/threads.ts";
import type { Unit } from "../physics/build.ts";
import { kindsOf } from "./kinds.ts";
import { airsOf, checkAsked, stickAsked, together, type AirRange, type InAir } from "./prepare.ts";
import type { Prepared } from "./prepared.ts";
import type { StickMoments } from "./stick.ts";
import { workbench, type AirTask, type StickTask, type Told } from "./workbench.ts";

export interface PrepareOptions {
  /** Air that the spans to be asked about meet; the year's when missing. */
  readonly within?: AirRange;
  /** Threads; all cores when missing. */
  readonly workers?: number;
  /** In a browser: makes a worker that runs this folder's worker. Without it the work is done in the program's own time. */
  readonly hire?: () => Worker;
  /** Called with the share done, from 0 to 1. */
  readonly onProgress?: (share: number) => void;
  readonly signal?: AbortSignal;
}

/** The airs' share of the work; the rest is the stick's. */
const AIRS = 0.95;

/**
 * The same as `prepareDuty`, to the bit, on as many cores as there are airs at most: the unit's leak does not matter. Errors: those of
 * `prepareDuty`; workers under 1; the signal's reason once it asks for that.
 */
export async function prepareWeek(
  unit: Unit,
  week: Week,
  { within, workers = cores(), hire, onProgress, signal }: PrepareOptions = {},
): Promise<Prepared> {
  if (!(Number.isInteger(workers) && workers >= 1))
    impossible("workers", workers, "a whole number, 1 or more");
  signal?.throwIfAborted();
  checkAsked(unit, week);
  const kinds = kindsOf(week);
  const airs = airsOf(unit, within);
  const makeHand: () => Hand = hire
    ? () => webHands(hire())
    : (threads(import.meta.url) ?? (() => ownHands(workbench())));
  const told: Told = { unit: { ...unit, leak: null }, week };
  const crew = crewOf(Array.from({ length: Math.min(workers, airs.length) }, makeHand), () => told);
  const calledOff = signalled(signal);
  const shares = airs.map(() => 0);
  const tell = (air: number) => (share: number) => {
    shares[air] = share;
    onProgress?.((AIRS * shares.reduce((sum, each) => sum + each, 0)) / airs.length);
  };
  try {
    const walked = airs.map(async (air, i) => {
      const part = await crew.ask<InAir>({ air } satisfies AirTask, tell(i));
      tell(i)(1);
      return part;
    });
    const parts = await Promise.race([calledOff.aborted, Promise.all(walked)]);
    const asked = stickAsked(parts);
    const stick =
      asked &&
      (await Promise.race([
        calledOff.aborted,
        crew.ask<StickMoments>({
          ...asked,
          coldest: airs[0]!,
          warmest: airs.at(-1)!,
        } satisfies StickTask),
      ]));
    onProgress?.(1);
    return together(unit, kinds, parts, stick);
  } finally {
    calledOff.release();
    await crew.dismiss();
  }
}
