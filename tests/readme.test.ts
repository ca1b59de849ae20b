import { spawnSync } from "node:child_process";
import { mkdtempSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { expect, test } from "vitest";
import { cautions } from "../demos/report/cautions.ts";
import { readCase } from "../src/inputs/case.ts";
import { traceFromCsv } from "../src/inputs/csv.ts";
import { caseData } from "../src/inputs/files.ts";

const root = join(import.meta.dirname, "..");
const readme = readFileSync(join(root, "README.md"), "utf8");

test("the README's example runs as it stands and reaches its end", { timeout: 60_000 }, () => {
  const example = /```ts\n([\s\S]*?)```/.exec(readme)![1]!;
  const folder = mkdtempSync(join(root, "tests/readme-"));
  try {
    const file = join(folder, "example.ts");
    writeFileSync(file, example.replace('"sumpfall"', '"../../src/index.ts"'));
    const ran = spawnSync("npx", ["tsx", file], { cwd: root, encoding: "utf8" });
    expect(ran.stderr).toBe("");
    expect(ran.stdout).toMatch(/leak opens[\s\S]*no drive[\s\S]*kiss pressure \d+ kPa/);
  } finally {
    rmSync(folder, { recursive: true });
  }
});

test("the README gives the two commands, and every script that it names exists", () => {
  expect(readme).toContain("npm ci && npm run demo\nnpm ci && npm test");
  const { scripts } = JSON.parse(readFileSync(join(root, "package.json"), "utf8")) as { scripts: object };
  for (const [, name] of readme.matchAll(/`npm run ([a-z]+)/g)) expect(scripts).toHaveProperty(name!);
});

test("the README's piece of a case and its trace are read as they stand", () => {
  const piece = JSON.parse(`{${/```json\n([\s\S]*?)```/.exec(readme)![1]!}}`) as object;
  const demo = caseData(join(root, "reference-data/cases/demo.json")) as object;
  const given = readCase({ ...demo, ...piece });
  expect(given.unit.leak!.opening.kind).toBe("hole");
  expect(given.week.days.map((trips) => trips.length)).toEqual([1, 2, 1, 1, 1, 1, 0]);
  const trace = traceFromCsv("README", /```csv\n([\s\S]*?)```/.exec(readme)![1]!);
  expect(trace.time.length).toBeGreaterThan(2);
  expect(trace.lateral.at(-1)).toBe(1.2);
});

test("the README warns of all that the report warns of", () => {
  const said = readme.slice(readme.indexOf("## Cautions")).toLowerCase();
  for (const words of cautions.flatMap((caution) => caution.toLowerCase().match(/[a-z']{6,}/g)!))
    expect(said).toContain(words);
});
