// Whether the checks as a whole are enough: many, of every link, from many sources, and with no row of a table left out.
import { existsSync, readFileSync } from "node:fs";
import { join } from "node:path";
import { afterEach, describe, expect, it, vi } from "vitest";
import { links, type Check } from "./check.ts";
import { allChecks, checkFiles, checksOf, documentOf } from "./gather.ts";

const checks = await allChecks();
const files = checkFiles();

function counted(of: (check: Check) => string): Map<string, number> {
  const counts = new Map<string, number>();
  for (const check of checks) counts.set(of(check), (counts.get(of(check)) ?? 0) + 1);
  return counts;
}

describe("the checks against the outside", () => {
  it("are at least 220, at least eighty of them published, at least thirty outcomes of several links", () => {
    expect(checks.length).toBeGreaterThanOrEqual(220);
    expect(checks.filter(({ kind }) => kind === "published").length).toBeGreaterThanOrEqual(80);
    expect(checks.filter(({ link }) => link === "several links").length).toBeGreaterThanOrEqual(30);
  });

  it("are as many of each kind as the README says", () => {
    const readme = readFileSync(join(import.meta.dirname, "../../README.md"), "utf8").replaceAll(/\s+/g, " ");
    const said =
      /Of these (\d+) checks, (\d+) .*? computed .*?, (\d+) against published .*?, (\d+) .*? recalled .*?, (\d+) against common practice and (\d+) against/;
    const kinds = counted(({ kind }) => kind);
    const counts = ["computed", "published", "recalled", "common practice", "assumed"].map((kind) =>
      kinds.get(kind),
    );
    expect(said.exec(readme)?.slice(1).map(Number)).toEqual([checks.length, ...counts]);
  });

  it.each(links)("look at the link %s at least five times", (link) => {
    expect(checks.filter((check) => check.link === link).length).toBeGreaterThanOrEqual(5);
  });

  it("come from at least forty-five sources, none with more than a tenth", () => {
    const sources = counted(({ source }) => documentOf(source));
    expect(sources.size).toBeGreaterThanOrEqual(45);
    const tooMany = [...sources].filter(([, count]) => count > checks.length / 10);
    expect(tooMany).toEqual([]);
  });

  it("spell one source one way", () => {
    const spellings = new Map<string, Set<string>>();
    for (const document of counted(({ source }) => documentOf(source)).keys()) {
      const plain = plainly(document);
      spellings.set(plain, (spellings.get(plain) ?? new Set()).add(document));
    }
    expect([...spellings.values()].filter(({ size }) => size > 1).map((same) => [...same])).toEqual([]);
  });

  it("make no claim twice", () => {
    const claims = counted(({ claim, link }) => `${link}: ${claim}`);
    expect([...claims].filter(([, count]) => count > 1)).toEqual([]);
  });

  it.each(files)("are run: %s has its runner", (file) => {
    const runner = join(import.meta.dirname, `${file}.reference.test.ts`);
    expect(existsSync(runner)).toBe(true);
    const text = readFileSync(runner, "utf8");
    expect(text).toContain(`from "./${file}.ts"`);
    expect(text).toContain("runChecks(checks)");
  });
});

// Without initials, punctuation and capitals: two sources that then read the same are one.
function plainly(document: string): string {
  return document
    .replace(/\b\p{Lu}\.(?=[\s-])/gu, "")
    .toLowerCase()
    .replace(/[^\p{L}\p{N}]+/gu, " ")
    .trim();
}

describe("tables of reference-data", () => {
  afterEach(() => {
    vi.doUnmock("node:fs");
    vi.resetModules();
  });

  it.each(files)("%s uses every row of the tables that it reads", async (file) => {
    const tables = new Map<string, number>();
    await withTables(file, (path, text) => {
      tables.set(path, text.trimEnd().split("\n").length);
      return text;
    });
    const sound = await outcome(file);
    const unused: string[] = [];
    for (const [table, lines] of tables) {
      for (let line = 1; line < lines; line++) {
        const spoilt = await withTables(file, (path, text) => (path === table ? spoil(text, line) : text));
        if (spoilt === sound)
          unused.push(`row ${line} of ${table.replace(/^.*reference-data/, "reference-data")}`);
      }
    }
    expect(unused).toEqual([]);
  });

  // All that a file of checks says and gets, as text; a table that it refuses to read is an outcome, too.
  async function outcome(file: string): Promise<string> {
    try {
      const found = await checksOf(file);
      return JSON.stringify(found.map((check) => [check.claim, check.source, check.expected, check.got()]));
    } catch (error) {
      return String(error);
    }
  }

  async function withTables(file: string, reading: (path: string, text: string) => string): Promise<string> {
    vi.resetModules();
    vi.doMock("node:fs", async (original) => {
      const fs = await original<typeof import("node:fs")>();
      return {
        ...fs,
        readFileSync: (...given: Parameters<typeof fs.readFileSync>) => {
          const content = fs.readFileSync(...given);
          const path = String(given[0]);
          return path.endsWith(".csv") && typeof content === "string" ? reading(path, content) : content;
        },
      };
    });
    return outcome(file);
  }

  // Every number of one row is moved so far that even a check of the worst row sees it; words stay as they are.
  function spoil(text: string, line: number): string {
    const lines = text.split("\n");
    const cells = (lines[line] ?? "").split(",");
    lines[line] = cells
      .map((cell) =>
        cell.trim() !== "" && Number.isFinite(Number(cell)) ? String(Number(cell) * 1.7 + 1) : cell,
      )
      .join(",");
    return lines.join("\n");
  }
});
