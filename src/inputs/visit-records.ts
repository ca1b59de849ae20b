// What the on-board computer tells by the open standard: when its records were cleared, and of a slip since.

import type { When } from "../lookback/evidence.ts";
import { assumed } from "./visit-assumed.ts";
import { byDistance, type Moment, type VisitClock } from "./visit-clock.ts";
import type { ItemOf, Told } from "./visit-item.ts";
import { asWritten, type Seeing } from "./visit-seeing.ts";
import { about, momentIn } from "./visit-moments.ts";

/** That it slipped for the first time. */
interface Slip {
  readonly kind: "first symptom";
  readonly symptom: "first sustained slip";
  readonly when: When;
}

const DAY = 86400;
const slip = (when: When): Slip => ({ kind: "first symptom", symptom: "first sustained slip", when });

/**
 * When the records were cleared: so far, or so many warm-ups, before the visit. A warm-up is a drive in which the coolant warms by 22 K and
 * reaches 70 °C; every trip after a long stand makes one. Source: SAE J1979, E/E diagnostic test modes (recalled).
 */
function sinceCleared(
  distance: number | undefined,
  warmUps: number | undefined,
  path: string,
  { clock, tripsPerDay, list, assume }: Seeing,
): Moment | null {
  list.want(
    (distance === undefined) !== (warmUps === undefined),
    path,
    "the distance or the warm-ups since the records were cleared, one of the two",
    distance === undefined ? "neither" : "both",
    '"410 mi" or 33',
  );
  if (distance === undefined && warmUps === undefined) return null;
  if (distance !== undefined) return byDistance(clock, Math.max(0, clock.distance - distance));
  assume(
    path,
    "a warm-up for every trip of the week",
    assumed("every trip after a stand of some hours warms up; short ones may not"),
  );
  const ago = (warmUps! * DAY) / Math.max(0.1, tripsPerDay);
  return { at: Math.max(0, clock.at - ago), error: Math.max(DAY, 0.25 * ago) };
}

/** Between a moment and the visit, by the odometer where that told it. */
const sinceThen = ({ at, error, driven }: Moment, clock: VisitClock): When =>
  driven === undefined
    ? { from: at, to: clock.at, error: Math.max(error, DAY) }
    : { from: driven.by, to: clock.distance, error: driven.error, of: clock.distance };

/** A slip code that the computer keeps: the first slip was then, or not before all records were cleared. */
export function slipCode(item: ItemOf<"stored slip code">, path: string, seeing: Seeing): Slip | null {
  const { clock, list, assume } = seeing;
  const { storedAt, distanceSinceStored: since, distanceSinceCleared, warmUpsSinceCleared } = item;
  list.want(
    storedAt === undefined || since === undefined,
    path,
    "storedAt or distanceSinceStored, not both",
    "both",
    '"distanceSinceStored": "120 mi"',
  );
  if (since !== undefined)
    list.want(
      !(since > clock.distance),
      `${path}.distanceSinceStored`,
      "no more than was driven since the last full",
      asWritten(seeing, `${path}.distanceSinceStored`),
      '"120 mi"',
    );
  const stored =
    since !== undefined
      ? byDistance(clock, clock.distance - since)
      : storedAt === undefined
        ? null
        : momentIn(seeing, `${path}.storedAt`, storedAt);
  if (stored?.driven !== undefined)
    return slip({ ...about(stored.driven.by, stored.driven.error), of: clock.distance });
  if (stored !== null) return slip(about(stored.at, Math.max(stored.error, DAY)));
  const cleared = sinceCleared(distanceSinceCleared, warmUpsSinceCleared, path, seeing);
  if (cleared === null) return null;
  assume(
    path,
    "the first slip is taken to lie after the records were cleared",
    assumed("nobody told of one before"),
  );
  return slip(sinceThen(cleared, clock));
}

/** Records that were cleared: no slip was stored since, or the first of those that were. */
export function codesCleared(item: ItemOf<"codes cleared">, path: string, seeing: Seeing): Told | null {
  const { clock } = seeing;
  const cleared = sinceCleared(item.distance, item.warmUps, path, seeing);
  if (cleared === null) return null;
  if (!item.slipCodeSince) return { kind: "not felt", symptom: "first sustained slip", until: clock.at };
  return slip(sinceThen(cleared, clock));
}
