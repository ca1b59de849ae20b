// A sagging line's pressure is the root that a plain search between nothing and the set point finds too.
import fc from "fast-check";
import { expect, test } from "vitest";
import { mixtureDensity } from "../../src/physics/supply/cooler-circuit.ts";
import { gasLeft, lineGas } from "../../src/physics/supply/pump.ts";
import {
  balance,
  type BalanceConditions,
  clutchCircuitFlow,
  deliveredAt,
  stillBalance,
} from "../../src/physics/supply/regulator.ts";
import { rootBetween } from "../../src/physics/supply/root.ts";
import { conditions } from "./conditions.ts";

/** What the pump delivers over what the clutch circuit takes at a line pressure, each by its own law. */
function surplus(p: number, at: BalanceConditions): number {
  const density = mixtureDensity(at.density, lineGas(at.gas, gasLeft(at.pump, at.inlet, p)));
  return deliveredAt(at, p) - clutchCircuitFlow(at.clutch, p, at.viscosity, density, at.setPoint);
}

test("a sagging line stands at the root that a plain search finds", () => {
  let [sagging, gassy, creeping, limited] = [0, 0, 0, 0];
  fc.assert(
    fc.property(conditions, (at) => {
      const out = stillBalance();
      balance(at, out);
      if (out.regime !== 3) return;
      const p = out.linePressure;
      const found = rootBetween(surplus, at, 0, at.setPoint);
      if (found < 1e-280) {
        // The square of a flow has no digits left there.
        expect(p).toBeLessThan(1e-270);
        return;
      }
      sagging++;
      if (at.gas > 0 && at.gas < 1) gassy++;
      if (at.viscosity > 1) creeping++;
      if (at.inletLimit < Infinity) limited++;
      // The search has the liquid's share as 1 less the gas, which leaves it as many digits less as that is small.
      const liquid = Math.max(1e-3, 1 - out.lineGas);
      expect(Math.abs(p - found)).toBeLessThanOrEqual((4e-15 + 4e-16 / liquid) * found);
    }),
    { numRuns: 5000 },
  );
  for (const seen of [sagging, gassy, creeping, limited]) expect(seen).toBeGreaterThan(100);
});
