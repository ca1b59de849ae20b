// Watching for events: each is a condition that must last. Its time is the instant at which the condition began,
// found inside the step by a straight line between the two looks.

import type { State } from "../physics/state.ts";

/** What can happen, in the trade's words, in the order in which a slow leak usually makes it happen. */
export type EventName =
  | "pan overfull"
  | "leak opens"
  | "hiding place full"
  | "first spot on the ground"
  | "level below the low mark"
  | "first gulp of air"
  | "slow engagement, cold"
  | "slow engagement, hot"
  | "first flare"
  | "cooler flow below half"
  | "learned fill at its limit"
  | "learned trim at its limit"
  | "lock-up slipping"
  | "line pressure below demand"
  | "first sustained slip"
  | "fluid too hot"
  | "vehicle falls behind"
  | "line parts"
  | "damage 0.1"
  | "damage 0.5"
  | "damage 1"
  | "topped up"
  | "no drive";

export interface HistoryEvent {
  readonly name: EventName;
  /** The clutch concerned, if it concerns one. */
  readonly clutch?: string;
  /** Seconds since the start of the history, seconds of running, metres on the odometer since the start. */
  readonly clock: number;
  readonly running: number;
  readonly distance: number;
  /** Fluid lost so far [kg], inside [kg], its temperature [K], and what the leak runs at now [m³/s at line conditions]. */
  readonly lost: number;
  readonly mass: number;
  readonly temperature: number;
  readonly leakFlow: number;
  /** What makes it an event, in words and numbers. */
  readonly condition: string;
}

/** A condition watched: true while its measure is above zero, an event once that has lasted. */
export interface Watcher {
  readonly name: EventName;
  readonly clutch?: string;
  readonly condition: string;
  readonly lasting: number;
  fired: boolean;
  /** Measure at the last look; clock, running time, distance and losses when the condition began. */
  last: number;
  since: Moment | null;
}

export interface Moment {
  clock: number;
  running: number;
  distance: number;
  lost: number;
  mass: number;
  temperature: number;
  leakFlow: number;
}

export const watcher = (name: EventName, condition: string, lasting: number, clutch?: string): Watcher => ({
  name,
  condition,
  lasting,
  fired: false,
  last: -1,
  since: null,
  ...(clutch === undefined ? {} : { clutch }),
});

export const newMoment = (): Moment => ({
  clock: 0,
  running: 0,
  distance: 0,
  lost: 0,
  mass: 0,
  temperature: 0,
  leakFlow: 0,
});

/** Writes the moment that a state stands for. */
export function momentOf(state: State, temperature: number, leakFlow: number, out: Moment): void {
  out.clock = state.clock;
  out.running = state.running;
  out.distance = state.distance;
  out.lost = state.hidden + state.onRoad + state.onGround;
  out.mass = state.mass;
  out.temperature = temperature;
  out.leakFlow = leakFlow;
}

/** Looks at one condition after a step from `before` to `now`; returns the event if this look makes it one. */
export function look(watch: Watcher, measure: number, before: Moment, now: Moment): HistoryEvent | undefined {
  const last = watch.last;
  watch.last = measure;
  if (!(measure > 0)) {
    if (watch.since === null) return undefined;
    // It ceased to hold on the way: a straight line says when.
    const ended = before.clock + (now.clock - before.clock) * (last / (last - measure));
    const { since } = watch;
    watch.since = null;
    return ended - since.clock >= watch.lasting ? fired(watch, since) : undefined;
  }
  if (watch.since === null) {
    const share = last > 0 || last === measure ? 0 : Math.min(1, Math.max(0, -last / (measure - last)));
    watch.since = between(before, now, share);
  }
  return now.clock - watch.since.clock < watch.lasting ? undefined : fired(watch, watch.since);
}

function fired(watch: Watcher, since: Moment): HistoryEvent {
  watch.fired = true;
  return eventAt(watch, since);
}

export function eventAt(watch: Watcher, moment: Moment): HistoryEvent {
  const { name, condition, clutch } = watch;
  return { name, condition, ...moment, ...(clutch === undefined ? {} : { clutch }) };
}

function between(a: Moment, b: Moment, share: number): Moment {
  const mix = (from: number, to: number) => from + (to - from) * share;
  return {
    clock: mix(a.clock, b.clock),
    running: mix(a.running, b.running),
    distance: mix(a.distance, b.distance),
    lost: mix(a.lost, b.lost),
    mass: mix(a.mass, b.mass),
    temperature: mix(a.temperature, b.temperature),
    leakFlow: mix(a.leakFlow, b.leakFlow),
  };
}
