// Whether somebody who looks finds a leak: how wet it is against how closely he looks. Nobody has published this for fluid under vehicles: every number here is assumed.

import { finite, fraction, positive } from "../errors.ts";
import type { LookKind } from "./evidence.ts";

/** A curve of finding: half of the leaks of `half` [m³/s] are found; `slope` in the logarithm of the flow; no more than `most` ever, what is hidden stays hidden. */
export interface Finding {
  readonly half: number;
  readonly slope: number;
  readonly most: number;
}

const mlPerHour = 1e-6 / 3600;

/** By how closely somebody looks. What a shield still holds is seen by nobody who leaves it on. */
export const findings: Readonly<Record<LookKind, Finding>> = {
  "walk round": { half: 60 * mlPerHour, slope: 1.2, most: 0.6 },
  "look underneath": { half: 8 * mlPerHour, slope: 1.5, most: 0.9 },
  "shield taken off": { half: 1 * mlPerHour, slope: 1.8, most: 0.97 },
};

/**
 * Probability that a look finds a leak of a flow [m³/s]: a logistic curve in the logarithm of the flow, under a ceiling.
 * Source of the form: MIL-HDBK-1823A, Nondestructive evaluation system reliability assessment, 2009 (recalled); its numbers are assumed.
 */
export function findsLeak(
  look: LookKind,
  flow: number,
  { half, slope, most }: Finding = findings[look],
): number {
  finite("flow", flow, "m³/s");
  positive("half", half, "m³/s");
  positive("slope", slope);
  fraction("most", most);
  return flow > 0 ? most / (1 + Math.exp(-slope * Math.log(flow / half))) : 0;
}
