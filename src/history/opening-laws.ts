// What of a leak's opening its law was made for: each with its range and its value so long after the leak opened.

import type { Range } from "../errors.ts";
import type { LeakOpening } from "../physics/build.ts";
import { annulusRange } from "../physics/leak/annulus.ts";
import { crackGapRange, shellParameter } from "../physics/leak/crack.ts";
import { holeRange } from "../physics/leak/hole.ts";
import { pitRange } from "../physics/leak/pits.ts";
import { sealClearance } from "../physics/leak/seal-creep.ts";
import { crackHalfLength, mouthOf, rustedFor, wallAtMouth } from "../physics/leaking.ts";

interface OpeningLaw {
  readonly range: Range;
  /** After `age` seconds of running and `calendar` seconds in all, over which it only rises or only falls; undefined for another kind of opening. */
  readonly value: (opening: LeakOpening, age: number, calendar: number) => number | undefined;
}

export const openingLaws: readonly OpeningLaw[] = [
  {
    range: holeRange,
    value(opening, age, calendar) {
      if (opening.kind === "hole") return opening.wall / opening.diameter;
      if (opening.kind !== "pit") return undefined;
      const mouth = mouthOf(opening, age, calendar);
      return mouth > 0 ? wallAtMouth(opening) / mouth : undefined;
    },
  },
  {
    range: annulusRange,
    value(opening, age) {
      if (opening.kind !== "seal") return undefined;
      const { clearance, finalClearance, creepTime, diameter } = opening;
      return sealClearance(clearance, finalClearance, creepTime, age) / diameter;
    },
  },
  {
    range: crackGapRange,
    value(opening, age) {
      if (opening.kind !== "crack") return undefined;
      // A line that has parted went through the longest crack that it bore.
      const half = crackHalfLength(opening, Math.min(age, opening.partsAfter));
      return shellParameter(half, opening.tubeRadius, opening.wall, opening.poisson);
    },
  },
  {
    range: pitRange,
    value: (opening, _, calendar) => (opening.kind === "pit" ? rustedFor(opening, calendar) : undefined),
  },
];
