// A law that moves takes its deliberate fault with it: every text that the sabotage changes stands in its file exactly once.
import { readFileSync } from "node:fs";
import { join } from "node:path";
import { expect, test } from "vitest";
import { chainMutations } from "./chain.ts";
import { decidingMutations } from "./deciding.ts";
import { flowMutations } from "./flows.ts";
import { linkMutations } from "./links.ts";
import { mutated } from "./mutation.ts";

test("every deliberate fault finds its place in the source and changes it", () => {
  const all = [...linkMutations, ...chainMutations, ...flowMutations, ...decidingMutations];
  expect(all.length).toBeGreaterThan(130);
  for (const mutation of all) {
    const source = readFileSync(join(import.meta.dirname, "../../src", mutation.file), "utf8");
    expect(mutated(mutation, source), mutation.what).not.toBe(source);
  }
});
