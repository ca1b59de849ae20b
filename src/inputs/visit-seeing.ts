// What the items of a visit are read with, and what each must fit: the build that they were seen on.

import type { Build } from "../physics/build.ts";
import type { Sourced } from "../sources/origin.ts";
import { given } from "../units/parse.ts";
import { show } from "../units/show.ts";
import type { Dating } from "./visit-moments.ts";

/** What items are read with; without a build that could be read no rule that needs one is tried. */
export interface Seeing extends Dating {
  readonly build: Build | null;
  readonly tripsPerDay: number;
  /** The numbers that are read, to be shown as they were written. */
  readonly origins: Readonly<Record<string, Sourced>>;
}

/** A number of the file as it was written there. */
export const asWritten = ({ origins }: Pick<Seeing, "origins">, path: string): string =>
  given(origins[path]?.text);

/** A volume that the unit can hold. */
export function volumeFits(
  volume: number,
  path: string,
  seeing: Pick<Seeing, "build" | "list" | "origins">,
): void {
  const { build, list } = seeing;
  if (build === null) return;
  list.want(
    !(volume >= build.fill),
    path,
    `less than the unit holds (${show(build.fill, "volume", "US")})`,
    asWritten(seeing, path),
    '"3 qt"',
  );
  list.want(
    !(volume < -build.fill / 2),
    path,
    "no more than half of the fill too much",
    asWritten(seeing, path),
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
