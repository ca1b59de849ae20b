// A run prints and writes all it promises; one that fails or is called off leaves what was there.
import { existsSync, mkdirSync, readdirSync, readFileSync, writeFileSync } from "node:fs";
import { dirname, join } from "node:path";
import { describe, expect, test } from "vitest";
import { cautions } from "../../demos/report/cautions.ts";
import { whyNot, writeFolder } from "../../demos/report/write-folder.ts";
import { freshFolder, runDemo, runProgram, shortCase } from "./demo.ts";
import { foreignUnits } from "./units.ts";
import { brokenTags } from "./well-formed.ts";

const timeout = 180_000;

test("the demo goes from full to burnt, and says when and how", { timeout }, async () => {
  const out = join(freshFolder(), "out");
  const { code, out: said } = await runDemo(["--out", out]);
  expect(code).toBe(0);
  for (const event of [
    "leak opens",
    "below low mark",
    "first spot",
    "first gulp of air",
    "burnt",
    "no drive",
  ])
    expect(said).toContain(event);
  expect(said).toMatch(/Ended at \d{4}-\d\d-\d\d \d\d:\d\d, \d+ mi .*: no drive\./);
  expect(said).toMatch(/agree to .*e-1\d of the fluid filled in/);
  for (const caution of cautions) expect(said).toContain(caution);
  expect(said).toMatch(/^Invented\. /m);

  const files = readdirSync(out).sort();
  expect(files).toEqual(expect.arrayContaining(["report.html", "history.svg", "fade.svg", "close-up-1.svg"]));
  for (const name of files) {
    const text = readFileSync(join(out, name), "utf8");
    expect(text).not.toMatch(/NaN|Infinity|undefined|\[object/);
    if (name.endsWith(".svg")) expect(brokenTags(text)).toEqual([]);
  }
  const page = readFileSync(join(out, "report.html"), "utf8");
  expect(page).not.toMatch(/<(?:link|script|img|iframe)\b|url\(\s*["']?http/);
  for (const label of [
    "running time [h]",
    "odometer [mi]",
    "odometer [km]",
    "slip heat [BTU]",
    "slip heat [kJ]",
  ])
    expect(page).toContain(label);

  // The switch: nothing is left of the other system, in prose, tables, events and pictures; the check itself notices.
  expect(foreignUnits(page, "US")).toEqual([]);
  expect(foreignUnits(page, "SI")).toEqual([]);
  expect(foreignUnits(page.replaceAll('class="si"', ""), "US").length).toBeGreaterThan(50);
  expect(foreignUnits(page.replaceAll('class="us"', ""), "SI").length).toBeGreaterThan(50);

  // One row for the damage of a clutch, and its dates.
  const burnt = [...said.matchAll(/^ *([a-z -]+) burnt +2025/gm)].map(([, clutch]) => clutch!);
  expect(burnt.length).toBeGreaterThan(1);
  for (const clutch of burnt) {
    expect(said.match(new RegExp(`^ *${clutch} (?:burnt|damage)`, "gm"))).toHaveLength(1);
    expect(said).toMatch(new RegExp(`^ *${clutch} +over 1 +burnt( +2025-01-\\d\\d \\d\\d:\\d\\d){3} `, "m"));
  }
  // Laws that were stretched are told with what it means, in a technician's units.
  expect(said).toMatch(/The steel beside a lining was hotter than glazing was measured: .*°F/);
  expect(said).not.toContain("Outside its range");

  // The picture in the README is the one that the demo makes.
  const made = readFileSync(join(out, "history.svg"), "utf8");
  const shown = readFileSync(join(import.meta.dirname, "../../demos/pictures/history.svg"), "utf8");
  expect(shown === made, "after npm run demo, copy out/history.svg into demos/pictures").toBe(true);
});

describe("a short case", { timeout }, () => {
  test("takes the user's own drive for every trip, in SI", async () => {
    const folder = freshFolder();
    const csv = join(folder, "drive.csv");
    const speeds = Array.from(
      { length: 300 },
      (_, i) => `${i},${Math.max(0, 50 * Math.sin(i / 40)).toFixed(2)}`,
    );
    writeFileSync(csv, `time [s],speed [km/h]\n${speeds.join("\n")}\n300,0\n`);
    const out = join(folder, "out");
    const { code, out: said } = await runDemo([shortCase(folder), "--trace", csv, "--si", "--out", out]);
    expect(code).toBe(0);
    // Three days of four trips of 300 s and two seconds of idling before each.
    expect(said).toMatch(/Ended at 2024-09-05 00:00, .* km \(.* mi\): end of span\./);
    expect(readFileSync(join(out, "history.svg"), "utf8")).toContain("odometer [km]");
    expect(readdirSync(folder).filter((name) => name.startsWith(".out"))).toEqual([]);
  });

  test("called off, it says so, writes nothing and leaves what was there", async () => {
    const folder = freshFolder();
    const out = join(folder, "out");
    writeFolder(out, new Map([["report.html", "of yesterday"]]));
    // Without a leak it would go on for years.
    let ended = false;
    const path = shortCase(folder, { leak: null, span: "8000 days" });
    const {
      code,
      out: said,
      err,
    } = await runDemo([path, "--out", out], (soFar, end) => {
      if (ended || !soFar.includes("Running")) return;
      ended = true;
      end("SIGINT");
    });
    expect(err).toContain("Called off; nothing was written.");
    expect(said).toBe("");
    expect(code).toBe(130);
    expect(readdirSync(out)).toEqual(["report.html"]);
    expect(readFileSync(join(out, "report.html"), "utf8")).toMatch(/^of yesterday\n/);
  });
});

test.each(["run", "ensemble"] as const)(
  "called off while %s still loads, it says so too",
  { timeout },
  async (program) => {
    const out = join(freshFolder(), "out");
    // As soon as the program listens to Ctrl-C, long before anything is loaded.
    const early = `const soon = setInterval(() => {
    if (process.listenerCount("SIGINT") === 0) return;
    clearInterval(soon);
    process.kill(process.pid, "SIGINT");
  }, 1);`;
    const ran = await runProgram(program, ["--out", out], undefined, [
      "--import",
      `data:text/javascript,${encodeURIComponent(early)}`,
    ]);
    expect(ran).toEqual({ code: 130, out: "", err: "Called off; nothing was written.\n" });
    expect(existsSync(out)).toBe(false);
  },
);

describe("the folder", () => {
  test("is replaced as a whole; folders in it move along", () => {
    const out = join(freshFolder(), "out");
    writeFolder(out, new Map([["report.html", "one"], ["old.svg", "one"]])); // prettier-ignore
    mkdirSync(join(out, "mine"));
    writeFileSync(join(out, "mine", "kept.txt"), "kept");
    expect(whyNot(out)).toBeNull();
    writeFolder(out, new Map([["report.html", "two"]]));
    expect(readdirSync(out).sort()).toEqual(["mine", "report.html"]);
    expect(readFileSync(join(out, "report.html"), "utf8")).toMatch(/^two\n/);
    expect(readFileSync(join(out, "mine", "kept.txt"), "utf8")).toBe("kept");
    expect(readdirSync(dirname(out))).toEqual(["out"]);
  });

  test("stays as it is when writing fails", () => {
    const out = join(freshFolder(), "out");
    writeFolder(out, new Map([["report.html", "one"]]));
    expect(() => writeFolder(out, new Map([["report.html", "two"], ["no/such/folder.svg", ""]]))).toThrow(); // prettier-ignore
    expect(readFileSync(join(out, "report.html"), "utf8")).toMatch(/^one\n/);
    expect(readdirSync(dirname(out))).toEqual(["out"]);
  });

  test("is not touched when it holds somebody's files", () => {
    const folder = freshFolder();
    writeFileSync(join(folder, "thesis.odt"), "");
    expect(whyNot(folder)).toContain("thesis.odt");
    expect(whyNot(join(folder, "thesis.odt"))).toContain("is a file");
    expect(whyNot(join(folder, "new"))).toBeNull();
    expect(existsSync(join(folder, "new"))).toBe(false);
  });

  test("is not touched when a picture or a report in it is somebody else's", () => {
    const out = join(freshFolder(), "out");
    writeFolder(out, new Map([["report.html", "one"], ["own.svg", "one"]])); // prettier-ignore
    writeFileSync(join(out, "photo.svg"), "mine");
    expect(whyNot(out)).toContain("photo.svg");
    const other = freshFolder();
    writeFileSync(join(other, "report.html"), "mine");
    expect(whyNot(other)).toContain("report.html");
  });

  test("that cannot be made is told before anything is computed", () => {
    expect(whyNot("/proc/foo")).toMatch(/cannot be written.*\/proc/);
    const file = join(freshFolder(), "file");
    writeFileSync(file, "");
    expect(whyNot(join(file, "below"))).toMatch(/cannot be written/);
  });
});
