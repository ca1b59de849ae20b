// What was found missing, or ran out of the drain.

import { show } from "../units/show.ts";
import { assumed, practice } from "./visit-assumed.ts";
import { errorOr, quart, seenAt, type ItemOf, type Told } from "./visit-item.ts";
import { asWritten, volumeFits, type Seeing } from "./visit-seeing.ts";

export function missing(
  item: ItemOf<"fluid missing" | "added until it ran">,
  path: string,
  seeing: Seeing,
): Told {
  volumeFits(item.volume, `${path}.volume`, seeing);
  const usual = Math.max(0.1 * quart, 0.05 * Math.abs(item.volume));
  return {
    kind: "fluid missing",
    at: seenAt(item, path, seeing),
    volume: item.volume,
    error: errorOr(
      item,
      path,
      seeing,
      usual,
      "what is missing: right to 0.1 qt (0.09 L) or 5 %",
      "a graduated jug and a level check",
    ),
    ...(item.by === undefined ? {} : { by: item.by }),
  };
}

/** What runs out of the drain: all but what stays in converter, cooler and passages. */
export function drained(item: ItemOf<"fluid drained">, path: string, seeing: Seeing): Told {
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
    assume(`${path}.error`, "what was drained: right to 0.1 qt (0.09 L) or 5 %", practice("a graduated pan"));
  return {
    kind: "fluid drained",
    at: seenAt(item, path, seeing),
    volume: item.volume,
    error: item.error ?? Math.max(0.1 * quart, 0.05 * item.volume),
    ...(item.by === undefined ? {} : { by: item.by }),
    stays,
    staysError: item.staysError ?? 0.1 * stays,
  };
}
