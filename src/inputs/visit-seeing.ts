// What the items of a visit are read with, and what each must fit: the build that they were seen on.

import type { Build } from "../physics/build.ts";
import { given } from "../units/parse.ts";
import type { Dating } from "./visit-moments.ts";

/** What items are read with; without a build that could be read no rule that needs one is tried. */
export interface Seeing extends Dating {
  readonly build: Build | null;
  readonly tripsPerDay: number;
}

/** A volume that the unit can hold. */
export function volumeFits(
  volume: number,
  path: string,
  { build, list }: Pick<Seeing, "build" | "list">,
): void {
  if (build === null) return;
  const litres = (cubic: number) => `${Number((cubic * 1e3).toPrecision(4))} L`;
  list.want(
    !(volume >= build.fill),
    path,
    `less than the unit holds (${litres(build.fill)})`,
    litres(volume),
    '"3 qt"',
  );
  list.want(
    !(volume < -build.fill / 2),
    path,
    "no more than half of the fill too much",
    litres(volume),
    '"-0.5 qt"',
  );
}

/** A clutch that the build has. */
export function clutchIs(clutch: string, path: string, { build, list }: Seeing): void {
  if (build === null) return;
  const names = [...build.clutches, build.lockUp.clutch].map(({ name }) => name);
  list.want(
    names.includes(clutch),
    `${path}.clutch`,
    `a clutch of the build: ${names.map((name) => `"${name}"`).join(", ")}`,
    given(clutch),
    `"${names[0] ?? ""}"`,
  );
}
