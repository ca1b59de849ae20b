// What a visit's file tells of the fluid that was in it: that it was full at first, and what was added since.

import type { Added, Evidence } from "../lookback/evidence.ts";
import { density } from "../physics/fluid/density.ts";
import { assumed, practice } from "./visit-assumed.ts";
import { halfRead } from "./visit-half-read.ts";
import { checkErrors } from "./visit-level.ts";
import { volumeFits, type Seeing } from "./visit-seeing.ts";
import { momentIn } from "./visit-moments.ts";
import type { PlainVisit } from "./visit-schema.ts";

/** That it was full at first, as closely as that was checked. */
export function fullAtFirst({ lastFull }: PlainVisit, { assume }: Seeing): Evidence[] {
  const error = checkErrors[lastFull.checked];
  if (error === null) {
    assume(
      "lastFull.checked",
      "full at the last service, to half a quart (0.47 L): nobody looked",
      assumed("what was put in is seldom measured"),
    );
    return [];
  }
  assume(
    "lastFull.checked",
    `full by ${lastFull.checked}: right to ${(error / 0.946352946e-3).toFixed(2)} qt (${(1e3 * error).toFixed(2)} L)`,
    practice("how such a check is made"),
  );
  return [{ name: "lastFull", kind: "known full", at: 0, error }];
}

const TOP_UP_AIR = 293.15;
/** Whose measure poured, when nobody is named. */
const SOMEBODY = "who topped it up";

/** Everything that was added, in the order of time. */
export function addedOf(
  tree: PlainVisit,
  there: (path: string) => boolean,
  seeing: Seeing,
  density15: number,
): readonly Added[] {
  const { assume } = seeing;
  const read = tree.topUps.flatMap((told, i): Added[] => {
    const path = `topUps[${i}]`;
    if (!there(`topUps.${i}`)) {
      halfRead(told, path, seeing);
      return [];
    }
    const { on, volume, error, temperature, by } = told;
    volumeFits(volume, `${path}.volume`, seeing);
    if (error === undefined)
      assume(`${path}.error`, "what was added: right to 10 %", practice("bottles, with a rest in them"));
    if (by === undefined)
      assume(
        `${path}.by`,
        "top-ups of which nobody is named are one person's: what one pours too much, the other does too",
        assumed("bottles are filled and rests are left by the same hand"),
      );
    return [
      {
        at: momentIn(seeing, `${path}.on`, on).at,
        volume,
        error: error ?? 0.1 * volume,
        temperature: temperature ?? TOP_UP_AIR,
        by: by ?? SOMEBODY,
      },
    ];
  });
  // Those of one moment and one measure are one, at the temperature of the first.
  const together: Added[] = [];
  for (const one of read.sort((a, b) => a.at - b.at)) {
    const last = together.at(-1);
    if (last === undefined || last.at !== one.at || last.by !== one.by) together.push(one);
    else {
      const volume =
        last.volume +
        (one.volume * density(density15, one.temperature)) / density(density15, last.temperature);
      together[together.length - 1] = { ...last, volume, error: last.error + one.error };
    }
  }
  return together;
}
