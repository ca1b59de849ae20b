// What a second of driving costs while nothing is wrong, while air is near the pickup, and while a clutch slips.
import { idleInNeutral } from "../../src/history/idle.ts";
import { margins } from "../../src/history/margin.ts";
import { newMeasures } from "../../src/history/measures.ts";
import { newRecent, note } from "../../src/history/record.ts";
import { engageFromRest, noEngagement } from "../../src/history/shift.ts";
import { tick } from "../../src/history/tick.ts";
import { look, momentOf, newMoment } from "../../src/history/watch.ts";
import { allocatedBy } from "./allocation.ts";
import { cpuTime, median } from "./clock.ts";
import { round, soundUnit, walkOf } from "./van.ts";

export type SecondKind = "healthy" | "air" | "slip";

/** What was found on one round: seconds of each kind, the processor time that they took [µs] and the steps. */
type Found = Record<SecondKind, { seconds: number; spent: number; steps: number }>;

export interface SecondCost {
  /** Processor time of one second [µs], and the shortage [m³] at which most seconds were of this kind. */
  readonly cost: number;
  readonly fillShort: number;
  /** Steps in one second; bytes allocated for each step of such a drive, the making of its walk included. */
  readonly steps: number;
  readonly allocated: number;
}

/** Cost of one second of each kind, each on the van with the shortage that gives most of them. */
export function costOfSeconds(): Record<SecondKind, SecondCost> {
  const shortages = [0, 1, 1.5, 2, 2.5, 3, 3.5, 4].map((litres) => litres * 1e-3);
  const scanned = shortages.map((fillShort) => {
    const kinds: SecondKind[] = [];
    drive(fillShort, kinds);
    return { fillShort, kinds, found: drive(fillShort, kinds) };
  });
  const costOf = (kind: SecondKind): SecondCost => {
    const { fillShort, kinds } = scanned.reduce((best, next) =>
      next.found[kind].seconds > best.found[kind].seconds ? next : best,
    );
    const repeats = Array.from({ length: 5 }, () => drive(fillShort, kinds)[kind]);
    const { steps, seconds } = repeats[0]!;
    return {
      cost: median(repeats.map((repeat) => repeat.spent / repeat.seconds)),
      fillShort,
      steps: steps / seconds,
      allocated: allocatedInADrive(fillShort, kinds),
    };
  };
  return { healthy: costOf("healthy"), air: costOf("air"), slip: costOf("slip") };
}

function allocatedInADrive(fillShort: number, kinds: SecondKind[]): number {
  let steps = 0;
  const bytes = allocatedBy(() => {
    const found = drive(fillShort, kinds);
    for (const kind of ["healthy", "air", "slip"] as const) steps += found[kind].steps;
  });
  return bytes / (2 * steps); // the round that settles is not counted in `found`
}

/**
 * The walk of a history with its watchers and its record of recent instants, over a round after one to settle. The clock is
 * read where the kind changes: "air" is a tick in which the pump draws air, "slip" one with slip in it.
 * `kinds` says of which kind each tick is, and is filled by the first drive.
 */
function drive(fillShort: number, kinds: SecondKind[]): Found {
  const walk = walkOf(fillShort);
  const { state, now } = walk;
  const measures = newMeasures(walk, margins(soundUnit));
  const recent = newRecent();
  const engagement = noEngagement();
  const [before, moment] = [newMoment(), newMoment()];
  const airy = 2 * soundUnit.build.sump.pickup.baseGas;
  let [steps, slipped, drew] = [0, false, false];
  const after = () => {
    momentOf(state, now.temperature, now.leakFlow, moment);
    measures.take(walk, engagement);
    for (let i = 0; i < measures.watched; i++) {
      const watch = measures.watchers[i]!;
      if (!watch.fired) look(watch, measures.values[i]!, before, moment);
    }
    momentOf(state, now.temperature, now.leakFlow, before);
    note(recent, walk);
    steps++;
    slipped ||= state.slipping;
    drew ||= state.gas > airy;
    return true;
  };

  const found: Found = {
    healthy: { seconds: 0, spent: 0, steps: 0 },
    air: { seconds: 0, spent: 0, steps: 0 },
    slip: { seconds: 0, spent: 0, steps: 0 },
  };
  for (let trip = 0; trip < 2; trip++) {
    idleInNeutral(walk, 2, soundUnit.build.engine.idleSpeed, after);
    engageFromRest(walk, engagement);
    let [from, since]: [number, number] = [cpuTime(), state.clock];
    let kind: SecondKind = kinds[trip * round.count] ?? "healthy";
    for (let i = 0; i < round.count; i++) {
      const next = kinds[trip * round.count + i];
      if (trip > 0 && next !== undefined && next !== kind) {
        const read = cpuTime();
        found[kind].spent += read - from;
        found[kind].seconds += state.clock - since;
        [from, since, kind] = [read, state.clock, next];
      }
      steps = 0;
      slipped = state.slipping;
      drew = state.gas > airy;
      tick(walk, round.dt[i]!, round.speed[i]!, round.grade[i]!, round.lateral[i]!, engagement, after);
      if (trip > 0) found[kind].steps += steps;
      if (next === undefined) kinds.push(slipped ? "slip" : drew ? "air" : "healthy");
    }
    if (trip > 0) {
      found[kind].spent += cpuTime() - from;
      found[kind].seconds += state.clock - since;
    }
  }
  return found;
}
