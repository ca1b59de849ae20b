// What a clutch looked like when the unit was open.

import { tints } from "../physics/damage/tint.ts";
import { given } from "../units/parse.ts";
import { seenAt, type ItemOf, type Told } from "./visit-item.ts";
import { asWritten, clutchIs, type Seeing } from "./visit-seeing.ts";

export function teardown(item: ItemOf<"teardown">, path: string, seeing: Seeing): Told {
  const { build, list } = seeing;
  const { clutch, burnt, lining, steelTint } = item;
  clutchIs(clutch, path, seeing);
  const pack =
    build === null ? undefined : [...build.clutches, build.lockUp.clutch].find(({ name }) => name === clutch);
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
    at: seenAt(item, path, seeing),
    clutch,
    burnt,
    ...(lining === undefined ? {} : { lining }),
    ...(steelTint === undefined ? {} : { steelTint }),
  };
}
