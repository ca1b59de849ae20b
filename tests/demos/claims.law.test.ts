// Every page's sentences that could be false are claims; here each is held to.

import { readdirSync } from "node:fs";
import { join } from "node:path";
import { describe, expect, test } from "vitest";
import type { Claim } from "../../demos/pages/parts/claim.ts";

const pages = join(import.meta.dirname, "../../demos/pages");
const modules = readdirSync(pages, { recursive: true, encoding: "utf8" }).filter((name) =>
  /(^|[\\/])page\.ts$/.test(name),
);

test("there is a page", () => expect(modules.length).toBeGreaterThan(0));

for (const name of modules) {
  const { title, claims } = (await import(join(pages, name))) as { title: string; claims: readonly Claim[] };
  describe(title, () => {
    test("makes claims, each once", () => {
      expect(claims.length).toBeGreaterThan(0);
      expect(new Set(claims.map(({ says }) => says)).size).toBe(claims.length);
    });
    test.each(claims.map((claim) => [claim.says, claim] as const))(
      "%s",
      (_, claim) => expect(claim.holds()).toBe(true),
      60_000,
    );
  });
}
