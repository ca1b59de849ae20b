// `npm run ensemble` as a user starts it: what it prints and writes, and that called off it leaves what was there.
import { existsSync, readdirSync, readFileSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { expect, test } from "vitest";
import { cautions } from "../../demos/report/cautions.ts";
import { writeFolder } from "../../demos/report/write-folder.ts";
import { freshFolder, runProgram, type Meanwhile, type Ran } from "../demo/demo.ts";
import { foreignUnits } from "../demo/units.ts";
import { brokenTags } from "../demo/well-formed.ts";
import { few, quickLeak } from "./van.ts";

const timeout = 240_000;

const runEnsemble = (words: readonly string[], meanwhile?: Meanwhile): Promise<Ran> =>
  runProgram("ensemble", words, meanwhile);

function caseIn(folder: string): string {
  const path = join(folder, "quick.json");
  writeFileSync(path, JSON.stringify(quickLeak));
  return path;
}

test(
  "tells the bands and what they hang on, and writes a page and pictures in both systems",
  { timeout },
  async () => {
    const folder = freshFolder();
    const out = join(folder, "deep", "out");
    const {
      code,
      out: said,
      err,
    } = await runEnsemble([
      ...[caseIn(folder), "--members", "20", "--only", few.join(","), "--si", "--out", out],
    ]);
    expect(err).toContain("21 of 21 histories");
    expect(code).toBe(0);
    expect(said).toContain("When it happens in 20 members");
    expect(said).toMatch(/pressure below demand .* 100 %/);
    expect(said).toMatch(/leak\.diameter .*larger means sooner/);
    for (const caution of cautions) expect(said).toContain(caution);
    const files = readdirSync(out).sort();
    expect(files).toEqual(["curve-bands.svg", "event-bands.svg", "report.html"]);
    for (const name of files) {
      const text = readFileSync(join(out, name), "utf8");
      expect(text).not.toMatch(/NaN|Infinity|undefined|\[object/);
      if (name.endsWith(".svg")) expect(brokenTags(text)).toEqual([]);
    }
    const page = readFileSync(join(out, "report.html"), "utf8");
    expect(foreignUnits(page, "US")).toEqual([]);
    expect(foreignUnits(page, "SI")).toEqual([]);
    for (const label of ["fluid lost [qt]", "fluid lost [L]", "running time [h]"])
      expect(page).toContain(label);
  },
);

test("called off, it says so, writes nothing and ends with 130", { timeout }, async () => {
  const folder = freshFolder();
  const out = join(folder, "out");
  writeFolder(out, new Map([["report.html", "of yesterday"]]));
  let ended = false;
  const {
    code,
    out: said,
    err,
  } = await runEnsemble([caseIn(folder), "--members", "500", "--out", out], (soFar, end) => {
    if (ended || !soFar.includes("Ctrl-C")) return;
    ended = true;
    setTimeout(() => end("SIGINT"), 1500);
  });
  expect(err).toContain("Called off; nothing was written.");
  expect(said).toBe("");
  expect(code).toBe(130);
  expect(readFileSync(join(out, "report.html"), "utf8")).toMatch(/^of yesterday\n/);
});

test("bad words and a bad case end with 2, and write nothing", { timeout }, async () => {
  const folder = freshFolder();
  const out = join(folder, "out");
  for (const [words, says] of [
    [["--members", "many"], "--members needs a whole number"],
    [["--only", "weather", caseIn(folder)], "weather: expected a part of the case with a range in it"],
    [[join(folder, "none.json")], "none.json"],
  ] as const) {
    const { code, err } = await runEnsemble([...words, "--out", out]);
    expect(err).toContain(says);
    expect(code).toBe(2);
  }
  expect(existsSync(out)).toBe(false);
});
