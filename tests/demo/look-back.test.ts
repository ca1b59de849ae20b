// The look back as a user starts it: what it refuses, what it prints, and that it leaves what was there when called off.
import { existsSync, mkdirSync, readFileSync, readdirSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { beforeAll, describe, expect, test } from "vitest";
import { freshFolder, runProgram, type Ran } from "./demo.ts";
import { notWellFormed } from "../plots/drawn.ts";
import { quickVisit } from "./quick-visit.ts";

const folder = freshFolder();
const out = join(folder, "out");
const few = ["--guesses", "1000", "--walks", "0"];

describe("the look back", { timeout: 240_000 }, () => {
  let ran: Ran;
  beforeAll(async () => {
    ran = await runProgram("look-back", [quickVisit(folder), "--out", out, ...few]);
  }, 240_000);

  test("prints the answer in plain sentences, and writes page, data and pictures", () => {
    expect(ran.err).not.toContain("expected");
    expect(ran.code).toBe(0);
    for (const says of [
      /^Invented <for> a test\.$/m,
      /9 times in 10 it was between .* before the visit/,
      /Was it the leak\? (Yes|No|Cannot be told)\./,
      /in (about|more|fewer)/,
      /not proof of anyone's fault/,
      /an invented van stands in/,
    ])
      expect(ran.out).toMatch(says);
    expect(readdirSync(out).sort()).toEqual(
      expect.arrayContaining([
        "answer.json",
        "causes.svg",
        "events.svg",
        "missing.svg",
        "next.svg",
        "opening.svg",
        "report.html",
      ]),
    );
    expect(readdirSync(join(folder, "prepared-weeks"))).toHaveLength(1);
    for (const name of readdirSync(out).filter((file) => file.endsWith(".svg")))
      expect(notWellFormed(readFileSync(join(out, name), "utf8")), name).toBe("");
  });

  test("never prints how likely an earlier look should have found it, unless that is asked for", () => {
    for (const text of [
      ran.out,
      readFileSync(join(out, "report.html"), "utf8"),
      readFileSync(join(out, "answer.json"), "utf8"),
    ]) {
      expect(text).not.toContain("would have found it");
      expect(text).not.toContain('"existed"');
    }
  });

  test("the data hold the answer with its caution", () => {
    const data = JSON.parse(readFileSync(join(out, "answer.json"), "utf8")) as Record<string, never>;
    expect(data).toMatchObject({
      caution: expect.stringContaining("not proof") as string,
      standIn: { build: true, fluid: true },
      guesses: 1000,
    });
    const { middle, nineTenths } = data["opened"] as {
      middle: { date: string };
      nineTenths: { date: string }[];
    };
    expect(nineTenths[0]!.date <= middle.date && middle.date <= nineTenths[1]!.date).toBe(true);
  });

  test("the week is prepared once; asked again it says the same, and about the looks where that is wanted", async () => {
    const again = join(folder, "again");
    const second = await runProgram("look-back", [
      quickVisit(folder),
      "--out",
      again,
      "--looks",
      "--workers",
      "1",
      "--units",
      "si",
      ...few,
    ]);
    expect(second.err).not.toMatch(/Preparing the week: \d/);
    expect(second.out).toContain("would have found it");
    expect(second.out).toMatch(/\d L were missing/);
    const answer = (from: string) =>
      JSON.parse(readFileSync(join(from, "answer.json"), "utf8")) as {
        opened: unknown;
        answer: { causes: unknown; missing: unknown };
      };
    expect(answer(again).opened).toEqual(answer(out).opened);
    expect(answer(again).answer.missing).toEqual(answer(out).answer.missing);
    expect(answer(again).answer.causes).toEqual(answer(out).answer.causes);
  });

  test("called off it leaves what was there", async () => {
    const before = readFileSync(join(out, "report.html"), "utf8");
    const ended = await runProgram("look-back", [quickVisit(folder), "--out", out, ...few], (said, end) => {
      if (said.includes("Asking every explanation")) end("SIGINT");
    });
    expect(ended.code).toBe(130);
    expect(ended.err).toContain("Called off; nothing was written.");
    expect(readFileSync(join(out, "report.html"), "utf8")).toBe(before);
    expect(readdirSync(folder).filter((name) => name.startsWith("."))).toEqual([]);
  });

  test("a kept week that is torn is prepared anew", async () => {
    const torn = join(folder, "prepared-weeks", readdirSync(join(folder, "prepared-weeks"))[0]!);
    writeFileSync(torn, "torn");
    const healed = await runProgram("look-back", [quickVisit(folder), "--out", out, ...few]);
    expect(healed.code).toBe(0);
    expect(readFileSync(torn).length).toBeGreaterThan(1000);
  });
});

describe.concurrent("the look back refuses", { timeout: 60_000 }, () => {
  const refused = async (...words: readonly string[]) => {
    const to = join(freshFolder(), "out");
    const ran = await runProgram("look-back", [...words, "--out", to]);
    expect(ran.out).toBe("");
    expect(ran.code).toBe(2);
    expect(existsSync(to)).toBe(false);
    return ran.err;
  };

  test("every fault of a visit, one line each", async () => {
    const here = freshFolder();
    const said = await refused(
      quickVisit(here, { visit: { date: "2024-01-01" }, evidence: [{ kind: "fluid missing", volume: 3 }] }),
    );
    expect(said).toMatch(/^visit\.date: expected a date after the last full/m);
    expect(said).toMatch(
      /^evidence\[0\]\.volume \(item 1, fluid missing\): expected a volume with its unit, for example "3 qt"; received 3, a number without a unit/m,
    );
  });

  test("too few guesses, a seed without its number, odd units, two files, a file that is not there", async () => {
    const dashed = await refused("--seed", "-1");
    expect(dashed).toContain("needs a value, and none that begins with a dash");
    expect(dashed).not.toContain("-XYZ");
    expect(await refused("one.json", "two.json")).toContain("One file at a time");
    expect(await refused("--guesses", "10")).toContain("1000 or more");
    expect(await refused("--units", "stone")).toContain("us or si");
    expect(await refused("no-such-visit.json")).toContain("no-such-visit.json");
  });

  test("a folder with other files in it", async () => {
    const here = freshFolder();
    mkdirSync(join(here, "mine"));
    writeFileSync(join(here, "mine", "photo.txt"), "mine");
    const ran = await runProgram("look-back", ["--out", join(here, "mine")]);
    expect(ran.code).toBe(2);
    expect(ran.err).toContain("photo.txt");
  });
});
