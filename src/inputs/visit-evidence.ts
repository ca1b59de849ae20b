// From what was seen, as a visit's file tells it, to what the laws can be asked about.

import type { Evidence } from "../lookback/evidence.ts";
import { assumed } from "./visit-assumed.ts";
import { coolerFlow, learnedFill, learnedTrim, linePressure } from "./visit-gauges.ts";
import { seenAt, type Item, type ItemOf, type Told } from "./visit-item.ts";
import { knownFull, stick } from "./visit-level.ts";
import { codesCleared, slipCode } from "./visit-records.ts";
import type { Seeing } from "./visit-seeing.ts";
import { firstSpot, firstSymptom, notFelt } from "./visit-symptoms.ts";
import { teardown } from "./visit-teardown.ts";
import { drained, missing } from "./visit-volumes.ts";

/** The items of one line of the file; none with the reason in the list, or where it tells nothing. */
export function evidenceOf(item: Item, path: string, seeing: Seeing): readonly Evidence[] {
  const told = toldBy(item, path, seeing);
  return told === null ? [] : [{ name: path, ...told } as Evidence];
}

function toldBy(item: Item, path: string, seeing: Seeing): Told | null {
  switch (item.kind) {
    case "fluid missing":
    case "added until it ran":
      return missing(item, path, seeing);
    case "fluid drained":
      return drained(item, path, seeing);
    case "dipstick":
      return stick(item, path, seeing);
    case "known full":
      return knownFull(item, path, seeing);
    case "drops":
      return drops(item, path, seeing);
    case "looked":
      return { kind: "looked", at: seenAt(item, path, seeing), look: item.how, seen: item.seen };
    case "first spot":
      return firstSpot(item, path, seeing);
    case "first symptom":
      return firstSymptom(item, path, seeing);
    case "not felt":
      return notFelt(item, path, seeing);
    case "stored slip code":
      return slipCode(item, path, seeing);
    case "codes cleared":
      return codesCleared(item, path, seeing);
    case "learned trim":
      return learnedTrim(item, path, seeing);
    case "learned fill":
      return learnedFill(item, path, seeing);
    case "line pressure":
      return linePressure(item, path, seeing);
    case "cooler flow":
      return coolerFlow(item, path, seeing);
    case "sediment":
      return { kind: "sediment", at: seenAt(item, path, seeing), amount: item.amount };
    case "teardown":
      return teardown(item, path, seeing);
    case "fluid in the coolant":
      return { kind: "fluid in the coolant", at: seenAt(item, path, seeing), found: item.found };
  }
}

/** Drops counted under the leak, parked or idling. */
function drops(item: ItemOf<"drops">, path: string, seeing: Seeing): Told {
  const { count, time, engine, dropVolume } = item;
  if (dropVolume === undefined)
    seeing.assume(
      `${path}.dropVolume`,
      "a drop is as large as the law of its rim says, to 15 %",
      assumed("nobody caught and weighed any"),
    );
  return {
    kind: "drops",
    at: seenAt(item, path, seeing),
    count,
    time,
    moment: engine === "off" ? "parked" : "idling hot",
    ...(dropVolume === undefined ? {} : { dropVolume }),
  };
}
