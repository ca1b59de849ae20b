// What was read on a gauge, in a jug, and from what the controller has learned.

import { errorOr, seenAt, type ItemOf, type Told } from "./visit-item.ts";
import { clutchIs, type Seeing } from "./visit-seeing.ts";

const steps = "it steps, and wanders by a step or two";

export function learnedTrim(item: ItemOf<"learned trim">, path: string, seeing: Seeing): Told {
  return {
    kind: "learned trim",
    at: seenAt(item, path, seeing),
    pressure: item.pressure,
    error: errorOr(item, path, seeing, 10e3, "learned trim: right to 10 kPa", steps),
  };
}

export function learnedFill(item: ItemOf<"learned fill">, path: string, seeing: Seeing): Told {
  clutchIs(item.clutch, path, seeing);
  return {
    kind: "learned fill",
    at: seenAt(item, path, seeing),
    clutch: item.clutch,
    time: item.time,
    error: errorOr(item, path, seeing, 0.02, "learned fill: right to 20 ms", steps),
  };
}

export function linePressure(item: ItemOf<"line pressure">, path: string, seeing: Seeing): Told {
  const usual = Math.max(8e3, 0.03 * item.pressure);
  return {
    kind: "line pressure",
    at: seenAt(item, path, seeing),
    pressure: item.pressure,
    error: errorOr(item, path, seeing, usual, "line pressure: right to 8 kPa or 3 %", "a shop's gauge"),
  };
}

export function coolerFlow(item: ItemOf<"cooler flow">, path: string, seeing: Seeing): Told {
  const usual = Math.max(0.2e-3 / 60, 0.07 * item.flow);
  return {
    kind: "cooler flow",
    at: seenAt(item, path, seeing),
    flow: item.flow,
    error: errorOr(item, path, seeing, usual, "cooler flow: right to 0.2 L/min or 7 %", "a jug and a watch"),
  };
}
