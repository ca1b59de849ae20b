// Where a number comes from. Nothing recalled counts as published.

export const originKinds = ["published", "recalled", "computed", "common practice", "assumed"] as const;
export type OriginKind = (typeof originKinds)[number];

/**
 * `source` names the document, the program or whose practice it is; `where` the table or page in it;
 * `because` says why the number was chosen, which every assumed one owes its reader.
 */
export interface Origin {
  readonly kind: OriginKind;
  readonly source: string;
  readonly where?: string;
  readonly because?: string;
}

/**
 * A number as it was written, its SI value with its unit ("" for none; drops are counted a minute), whether only whole
 * numbers are possible, where it comes from and the range in which it may lie.
 */
export interface Sourced {
  readonly text: string;
  readonly value: number;
  readonly unit: string;
  readonly whole: boolean;
  readonly origin: Origin | null;
  readonly range: readonly [number, number] | null;
}

/** One line for a footnote: "assumed: this project (no published value)". */
export function originText(origin: Origin): string {
  const where = origin.where === undefined ? "" : `, ${origin.where}`;
  const because = origin.because === undefined ? "" : ` (${origin.because})`;
  return `${origin.kind}: ${origin.source}${where}${because}`;
}
