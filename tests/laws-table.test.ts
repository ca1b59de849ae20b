// DEVELOPERS.md lists every law that has a range, with its file and its source, as the code has them.
import { readFileSync } from "node:fs";
import { expect, test } from "vitest";
import { lawRows } from "./laws-table.ts";

test("the table of laws in the guide is that of the code", async () => {
  const guide = readFileSync(new URL("../DEVELOPERS.md", import.meta.url), "utf8");
  const table = guide.split("\n").filter((line) => /^\| .* \| `[a-z-]+\/[a-z-]+\.ts` \|/.test(line));
  expect(table).toEqual(await lawRows());
});
