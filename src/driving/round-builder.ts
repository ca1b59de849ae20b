import { type Trace } from "./trace.ts";

/** A straight piece of road and how it is driven: away from where it starts, up to `cruise`, down to `exit`. */
export interface Stretch {
  readonly length: number;
  readonly cruise: number;
  readonly exit: number;
  /** Accelerations, both positive [m/s2]. */
  readonly launch: number;
  readonly braking: number;
  readonly grade: number;
}

/** Lays pieces of driving one after the other; speeds join, distances are kept. SI. */
export interface RoundBuilder {
  now(): number;
  idle(seconds: number): void;
  stretch(piece: Stretch): void;
  /**
   * At the present speed around a bend; side +1 to the left, -1 to the right. The first and last moments have half the
   * curvature, as a wheel is turned in and out; the heading changes by `angle` in all.
   */
  turn(radius: number, angle: number, side: number, grade: number): void;
  trace(name: string): Trace;
}

const easing = 0.8; // s: how long the wheel is turned into a bend, and out of it
const fade = 8; // m/s: beyond it a launch goes on at half its acceleration, as the gears get longer

/** A builder that stands at time zero. */
export function roundBuilder(): RoundBuilder {
  const [time, speed, grade, lateral]: number[][] = [[0], [0], [], []];
  let hill = 0;
  const go = (seconds: number, to: number, aside: number) => {
    if (seconds < 1e-6) return; // nothing to lay; a speed this close joins by itself
    time.push(time[time.length - 1] + seconds);
    speed.push(to);
    grade.push(hill);
    lateral.push(aside);
  };
  // Distance of a launch from v0 up to v, in its two parts.
  const upDistance = (v0: number, v: number, launch: number) => {
    const knee = Math.min(v, Math.max(v0, fade));
    return (knee * knee - v0 * v0) / (2 * launch) + (v * v - knee * knee) / launch;
  };
  const downDistance = (v: number, v1: number, braking: number) => (v * v - v1 * v1) / (2 * braking);

  return {
    now: () => time[time.length - 1],
    idle: (seconds) => go(seconds, 0, 0),
    turn(radius, angle, side, slope) {
      const v = speed[speed.length - 1];
      hill = slope;
      const whole = (radius * angle) / v;
      const ease = Math.min(easing, whole);
      const lateral = (side * v * v) / radius;
      go(ease, v, lateral / 2);
      go(whole - ease, v, lateral);
      go(ease, v, lateral / 2);
    },
    stretch({ length, cruise, exit, launch, braking, grade: slope }) {
      const v0 = speed[speed.length - 1];
      hill = slope;
      const needs = (top: number) => upDistance(v0, top, launch) + downDistance(top, exit, braking);
      // Highest speed that the length allows, by halving; at least the higher of the two ends.
      let [low, top] = [Math.max(v0, exit), Math.max(cruise, v0, exit)];
      if (needs(top) > length) {
        for (let i = 0; i < 60; i++) {
          const middle = 0.5 * (low + top);
          if (needs(middle) > length) top = middle;
          else low = middle;
        }
        top = low;
      }
      const knee = Math.min(top, Math.max(v0, fade));
      go((knee - v0) / launch, knee, 0);
      go((2 * (top - knee)) / launch, top, 0);
      go(top > 0 ? Math.max(0, length - needs(top)) / top : 0, top, 0);
      go((top - exit) / braking, exit, 0);
    },
    trace: (name) => ({
      name,
      time: Float64Array.from(time),
      speed: Float64Array.from(speed),
      grade: Float64Array.from([...grade, hill]),
      lateral: Float64Array.from([...lateral, 0]),
    }),
  };
}
