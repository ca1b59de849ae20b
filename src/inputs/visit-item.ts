// One line of what was seen, as the file tells it and as the laws are asked about it.

import type { Evidence } from "../lookback/evidence.ts";
import type { Plain } from "./gather.ts";
import { practice } from "./visit-assumed.ts";
import type { EvidenceTree } from "./visit-evidence-schema.ts";
import { momentOrVisit } from "./visit-moments.ts";
import type { Seeing } from "./visit-seeing.ts";

export type Item = Plain<EvidenceTree>;
export type ItemOf<K extends Item["kind"]> = Extract<Item, { kind: K }>;
export type Told = Evidence extends infer E ? (E extends Evidence ? Omit<E, "name"> : never) : never;

export const quart = 0.946352946e-3;

/** When an item was seen: at the visit, unless it says when. */
export const seenAt = (item: { readonly on?: unknown }, path: string, seeing: Seeing): number =>
  momentOrVisit(seeing, `${path}.on`, item.on).at;

/** The error that an item tells, else the usual one, which is then assumed. */
export function errorOr(
  { error }: { readonly error?: number | undefined },
  path: string,
  { assume }: Seeing,
  usual: number,
  says: string,
  because: string,
): number {
  if (error === undefined) assume(`${path}.error`, says, practice(because));
  return error ?? usual;
}
