/** The links of the chain, by the names under which their checks are counted. */
export const links = [
  "fluid",
  "leak path",
  "regime",
  "growth",
  "hiding places",
  "sump",
  "pickup and air",
  "supply",
  "line pressure",
  "clutch",
  "heat",
  "damage",
  "load",
  "several links",
  "ensemble",
  "looking back",
  "deciding",
] as const;
export type Link = (typeof links)[number];

/** Where an expected number comes from; nothing recalled counts as published. */
export type Kind = "published" | "recalled" | "computed" | "common practice" | "assumed";

/** A claim about one number that somebody outside this project has printed, measured or computed. */
export interface Check {
  readonly claim: string;
  readonly link: Link;
  /** Author, title or standard, year, place in it; factory and shop pages by kind and year only. */
  readonly source: string;
  readonly kind: Kind;
  readonly expected: number;
  readonly got: () => number;
  /** `relative` to the expected value, or `absolute` in its unit. */
  readonly tolerance: { readonly relative: number } | { readonly absolute: number };
  /** Why the tolerance is what it is, where the printed digits do not say it. */
  readonly because?: string;
}

export function allowance(check: Check): number {
  return "relative" in check.tolerance
    ? check.tolerance.relative * Math.abs(check.expected)
    : check.tolerance.absolute;
}

export function passes(check: Check): boolean {
  return Math.abs(check.got() - check.expected) <= allowance(check);
}
