// From what was seen, as a visit's file tells it, to what the laws can be asked about.

import type { EventName } from "../history/watch.ts";
import type { Evidence } from "../lookback/evidence.ts";
import { tints } from "../physics/damage/tint.ts";
import { given } from "../units/parse.ts";
import { show } from "../units/show.ts";
import type { Plain } from "./gather.ts";
import type { EvidenceTree, fullWords, symptomWords } from "./visit-evidence-schema.ts";
import { momentOrVisit, whenOf } from "./visit-moments.ts";
import { sinceCleared, sinceThen, slipCode } from "./visit-records.ts";
import { asWritten, clutchIs, volumeFits, type Seeing } from "./visit-seeing.ts";
import { assumed, practice } from "./visit-assumed.ts";

type Item = Plain<EvidenceTree>;
type ItemOf<K extends Item["kind"]> = Extract<Item, { kind: K }>;
type Told = Evidence extends infer E ? (E extends Evidence ? Omit<E, "name"> : never) : never;

const quart = 0.946352946e-3;

/** What a driver feels, as the event that makes it. */
const symptoms: Readonly<Record<(typeof symptomWords)[number], EventName>> = {
  "slow into gear": "slow engagement, cold",
  "slow into gear, cold": "slow engagement, cold",
  "slow into gear, hot": "slow engagement, hot",
  flare: "first flare",
  slips: "first sustained slip",
  "lock-up slips": "lock-up slipping",
  "runs hot": "fluid too hot",
  "falls behind": "vehicle falls behind",
  "does not move": "no drive",
  whines: "first gulp of air",
};

/** How closely a check of the level tells [m³]; null: nobody looked. */
export const checkErrors: Readonly<Record<(typeof fullWords)[number], number | null>> = {
  "hot dipstick": 0.25 * quart,
  "overflow plug": 0.15 * quart,
  "service without a look": null,
};

/** Where the dipstick is wet, by its words, with an error: 0 low mark, 1 full. */
const positions: Readonly<Record<string, readonly [number, number]>> = {
  "at the full mark": [1, 0.15],
  "between the marks": [0.5, 0.3],
  "at the low mark": [0, 0.15],
  "below the low mark": [-0.5, 0.35],
};

/** The items of one line of the file; none with the reason in the list, or where it tells nothing. */
export function evidenceOf(item: Item, path: string, seeing: Seeing): readonly Evidence[] {
  const told = toldBy(item, path, seeing);
  return told === null ? [] : [{ name: path, ...told } as Evidence];
}

function toldBy(item: Item, path: string, seeing: Seeing): Told | null {
  const { clock, assume, list, build } = seeing;
  const seenAt = (on: unknown) => momentOrVisit(seeing, `${path}.on`, on).at;
  const errorOr = (error: number | undefined, usual: number, says: string, because: string): number => {
    if (error === undefined) assume(`${path}.error`, says, practice(because));
    return error ?? usual;
  };
  switch (item.kind) {
    case "fluid missing":
    case "added until it ran": {
      volumeFits(item.volume, `${path}.volume`, seeing);
      const usual = Math.max(0.1 * quart, 0.05 * Math.abs(item.volume));
      return {
        kind: "fluid missing",
        at: seenAt(item.on),
        volume: item.volume,
        error: errorOr(
          item.error,
          usual,
          "what is missing: right to 0.1 qt or 5 %",
          "a graduated jug and a level check",
        ),
        ...(item.by === undefined ? {} : { by: item.by }),
      };
    }
    case "fluid drained":
      return drained(item, path, seeing);
    case "dipstick": {
      const { temperature, reads } = item;
      if (reads === "dry")
        return {
          kind: "off the dipstick",
          at: seenAt(item.on),
          temperature,
          error: errorOr(
            item.error,
            0.2,
            "a dry stick: right to a fifth of the marks' distance",
            "tilt, splash, a tube that is wet",
          ),
        };
      const [position, usual] = typeof reads === "number" ? [reads, 0.2] : positions[reads]!;
      const error = errorOr(
        item.error,
        usual,
        `the stick: right to ${usual} of the marks' distance`,
        "tilt, splash, a tube that is wet",
      );
      return { kind: "dipstick", at: seenAt(item.on), temperature, position, error };
    }
    case "drops": {
      const { count, time, engine, dropVolume } = item;
      if (dropVolume === undefined)
        assume(
          `${path}.dropVolume`,
          "a drop is as large as the law of its rim says, to 15 %",
          assumed("nobody caught and weighed any"),
        );
      return {
        kind: "drops",
        at: seenAt(item.on),
        count,
        time,
        moment: engine === "off" ? "parked" : "idling hot",
        ...(dropVolume === undefined ? {} : { dropVolume }),
      };
    }
    case "first spot": {
      const when = whenOf(seeing, path, item);
      return when === null ? null : { kind: "first spot", when };
    }
    case "first symptom": {
      if (item.what === "slow into gear")
        assume(
          `${path}.what`,
          "slow into gear: cold, unless hot is said",
          practice("the first that a driver notices is the morning's"),
        );
      const when = whenOf(seeing, path, item);
      return when === null ? null : { kind: "first symptom", symptom: symptoms[item.what], when };
    }
    case "not felt": {
      const until = momentOrVisit(seeing, `${path}.until`, item.until).at;
      return { kind: "not felt", symptom: symptoms[item.what], until };
    }
    case "known full": {
      const usual = checkErrors[item.checked];
      if (usual === null) {
        assume(
          path,
          "a service without a look at the level tells nothing of the level",
          assumed("nobody looked"),
        );
        return null;
      }
      return {
        kind: "known full",
        at: seenAt(item.on),
        error: errorOr(
          item.error,
          usual,
          `full by ${item.checked}: right to ${(usual / quart).toFixed(2)} qt`,
          "how such a check is made",
        ),
      };
    }
    case "looked":
      return { kind: "looked", at: seenAt(item.on), look: item.how, seen: item.seen };
    case "stored slip code":
      return slipCode(item, path, seeing);
    case "codes cleared": {
      const cleared = sinceCleared(item.distance, item.warmUps, path, seeing);
      if (cleared === null) return null;
      if (!item.slipCodeSince) return { kind: "not felt", symptom: "first sustained slip", until: clock.at };
      return {
        kind: "first symptom",
        symptom: "first sustained slip",
        when: sinceThen(cleared, clock),
      };
    }
    case "learned trim":
      return {
        kind: "learned trim",
        at: seenAt(item.on),
        pressure: item.pressure,
        error: errorOr(
          item.error,
          10e3,
          "learned trim: right to 10 kPa",
          "it steps, and wanders by a step or two",
        ),
      };
    case "learned fill":
      clutchIs(item.clutch, path, seeing);
      return {
        kind: "learned fill",
        at: seenAt(item.on),
        clutch: item.clutch,
        time: item.time,
        error: errorOr(
          item.error,
          0.02,
          "learned fill: right to 20 ms",
          "it steps, and wanders by a step or two",
        ),
      };
    case "line pressure":
      return {
        kind: "line pressure",
        at: seenAt(item.on),
        pressure: item.pressure,
        error: errorOr(
          item.error,
          Math.max(8e3, 0.03 * item.pressure),
          "line pressure: right to 8 kPa or 3 %",
          "a shop's gauge",
        ),
      };
    case "cooler flow":
      return {
        kind: "cooler flow",
        at: seenAt(item.on),
        flow: item.flow,
        error: errorOr(
          item.error,
          Math.max(0.2e-3 / 60, 0.07 * item.flow),
          "cooler flow: right to 0.2 L/min or 7 %",
          "a jug and a watch",
        ),
      };
    case "sediment":
      return { kind: "sediment", at: seenAt(item.on), amount: item.amount };
    case "teardown": {
      const { clutch, burnt, lining, steelTint } = item;
      clutchIs(clutch, path, seeing);
      const pack =
        build === null
          ? undefined
          : [...build.clutches, build.lockUp.clutch].find(({ name }) => name === clutch);
      list.want(
        lining === undefined || pack === undefined || !(lining > 1.05 * pack.liningThickness),
        `${path}.lining`,
        `no more than a new lining of the ${clutch}`,
        asWritten(seeing, `${path}.lining`),
        '"0.4 mm"',
      );
      list.want(
        steelTint === undefined || tints.some(({ name }) => name === steelTint),
        `${path}.steelTint`,
        `one of ${tints.map(({ name }) => `"${name}"`).join(", ")}`,
        given(steelTint),
        '"straw"',
      );
      return {
        kind: "teardown",
        at: seenAt(item.on),
        clutch,
        burnt,
        ...(lining === undefined ? {} : { lining }),
        ...(steelTint === undefined ? {} : { steelTint }),
      };
    }
    case "fluid in the coolant":
      return { kind: "fluid in the coolant", at: seenAt(item.on), found: item.found };
  }
}

/** What runs out of the drain: all but what stays in converter, cooler and passages. */
function drained(item: ItemOf<"fluid drained">, path: string, seeing: Seeing): Told {
  const { build, assume, list } = seeing;
  volumeFits(item.volume, `${path}.volume`, seeing);
  const held =
    build === null
      ? Number.NaN
      : build.holdUp.converter + build.holdUp.coolerAndLines + build.holdUp.passages;
  if (item.stays === undefined)
    assume(
      `${path}.stays`,
      "the drain does not reach converter, cooler and passages",
      assumed("what the build holds there"),
    );
  const stays = item.stays ?? held;
  if (item.staysError === undefined)
    assume(
      `${path}.staysError`,
      "what the drain does not reach: known to 10 %",
      assumed("it depends on how long it stood and dripped"),
    );
  list.want(
    build === null || !(item.volume + stays > 1.3 * build.fill),
    `${path}.volume`,
    "no more than the unit holds, with what the drain does not reach",
    `${asWritten(seeing, `${path}.volume`)}, with what stays ${show(item.volume + stays, "volume", "US")}`,
    '"4 qt"',
  );
  if (item.error === undefined)
    assume(`${path}.error`, "what was drained: right to 0.1 qt or 5 %", practice("a graduated pan"));
  return {
    kind: "fluid drained",
    at: momentOrVisit(seeing, `${path}.on`, item.on).at,
    volume: item.volume,
    error: item.error ?? Math.max(0.1 * quart, 0.05 * item.volume),
    ...(item.by === undefined ? {} : { by: item.by }),
    stays,
    staysError: item.staysError ?? 0.1 * stays,
  };
}
