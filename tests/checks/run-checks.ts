import { expect, it } from "vitest";
import { allowance, type Check } from "./check.ts";

/** One vitest case a check, titled by its claim, so that a failure names what is no longer true. */
export function runChecks(checks: readonly Check[]): void {
  for (const check of checks) {
    it(`${check.link}: ${check.claim} [${check.kind}: ${check.source}]`, () => {
      expect(Math.abs(check.got() - check.expected)).toBeLessThanOrEqual(allowance(check));
    });
  }
}
