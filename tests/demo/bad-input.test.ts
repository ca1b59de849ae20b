// Bad input is told, one line a fault with its place and a way out; the exit code is 2 and nothing is written.
import { existsSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { describe, expect, test, vi } from "vitest";
import { caseData } from "../../src/inputs/files.ts";
import { argumentsFrom } from "../../demos/report/arguments.ts";
import { remarksText } from "../../demos/report/driven.ts";
import { loadCase } from "../../demos/report/load-case.ts";
import { demo } from "../../demos/report/demo.ts";
import { caseFile, faultsOf } from "../inputs/shipped.ts";
import { freshFolder, runDemo, shortCase } from "./demo.ts";

const shipped = caseData(caseFile("demo")) as { leak: object; fluid: object };

/** Runs the demo on input that is wrong; returns the lines it prints. */
async function refused(...words: readonly string[]): Promise<readonly string[]> {
  const out = join(freshFolder(), "out");
  const ran = await runDemo([...words, "--out", out]);
  expect(ran.out).toBe("");
  expect(ran.code).toBe(2);
  expect(existsSync(out)).toBe(false);
  return ran.err.trimEnd().split("\n");
}

describe.concurrent("the demo refuses", { timeout: 120_000 }, () => {
  test("a file that is not there", async () => {
    const [line, ...more] = await refused("no-such-case.json");
    expect(line).toMatch(/^case: expected the name of a file that can be read; received no-such-case\.json$/);
    expect(more).toEqual([]);
  });

  test("text that is no JSON", async () => {
    const path = join(freshFolder(), "broken.json");
    writeFileSync(path, '{ "name": "half a case", ');
    const lines = await refused(path);
    expect(lines).toEqual([
      expect.stringMatching(
        /broken\.json line 1, column 26: expected a name in double quotes \("\) after the comma, or no comma; received the end of the file$/,
      ),
    ]);
  });

  test("negative and bare numbers, all at once", async () => {
    const path = shortCase(freshFolder(), {
      span: 3,
      start: { date: "2024-09-02", odometer: "-10 mi" },
      fluid: { ...shipped.fluid, density15: "-860 kg/m3" },
    });
    const lines = await refused(path);
    expect(lines.map((line) => line.split(":")[0])).toEqual(
      expect.arrayContaining(["span", "start.odometer", "fluid.density15"]),
    );
    expect(lines.find((line) => line.startsWith("span:"))).toMatch(/such as "|for example "/);
  });

  test("a case that contradicts itself", async () => {
    const path = shortCase(freshFolder(), {
      opens: { date: "2020-01-01" },
      leak: { ...shipped.leak, drops: "90 drops/min", finalDrops: "1 drop/min" },
    });
    const lines = await refused(path);
    expect(lines.map((line) => line.split(":")[0])).toEqual(expect.arrayContaining(["opens.date"]));
  });

  test("a trace with words and gaps, each with its line", async () => {
    const folder = freshFolder();
    const path = join(folder, "drive.csv");
    writeFileSync(path, "time [s],speed [mph]\n0,0\n1,fast\n2,\n3,10\n3,12\n");
    const lines = await refused("--trace", path);
    expect(lines).toEqual([
      expect.stringMatching(/^drive\.csv line 3, speed: expected a number.*received "fast"$/),
      expect.stringMatching(/^drive\.csv line 4, speed: expected a number/),
      expect.stringMatching(/^drive\.csv line 6, time: .*mergeRepeats/),
      expect.stringMatching(/^On the command line mergeRepeats is --merge-repeats/),
    ]);
  });

  test("a word that it does not know, and says what it accepts", async () => {
    const lines = await refused("--colour");
    expect(lines[0]).toBe("Unknown option '--colour'.");
    for (const accepted of ["--trace", "--out", "--us", "--si", "CASE.json"])
      expect(lines.join("\n")).toContain(accepted);
  });
});

test("faults of the trace and of the case are told together", () => {
  const caseFile = shortCase(freshFolder(), { span: 3 });
  const faults = faultsOf(() => loadCase({ caseFile, trace: "nowhere.csv" }));
  expect(faults.map(({ path }) => path)).toEqual(["--trace", "span"]);
});

test("a trace is mended as far as the command line asks, on every trip, and what was mended is told once", () => {
  const folder = freshFolder();
  const trace = join(folder, "drive.csv");
  writeFileSync(trace, "time [s],speed [m/s]\n20,4\n21,8\n21,10\n33,16\n34,0\n");
  const words = ["--trace", trace, "--merge-repeats", "--bridge-gaps", "0.25 min", "--lead-in", "1 m/s2"];
  const asked = argumentsFrom([shortCase(folder), ...words])!;
  const { week, remarks } = loadCase(asked).given;
  // Four seconds from standstill, and the fourteen of the drive.
  const { dt } = week.days.flat()[0]!.ticks;
  expect(dt.reduce((sum, each) => sum + each, 0)).toBeCloseTo(4 + 14, 9);
  expect(remarks).toEqual([
    "drive.csv: line 3: 2 rows at 21 s became one, their mean",
    "drive.csv: line 5: 12 s without a row were bridged by a straight line from 9.00 to 16.0 m/s",
    "drive.csv: line 2: it begins at 4.00 m/s: 4.00 s and 8.00 m from standstill stand before it",
  ]);
  expect(remarksText(remarks)[0]).toBe(
    "Of the recorded drive drive.csv: line 3: 2 rows at 21 s became one, their mean.",
  );
  expect(remarksText(Array.from({ length: 9 }, (_, i) => `a: ${i}`)).at(-1)).toBe(
    "And 3 more remarks of this kind.",
  );
});

test.each([
  [["--bridge-gaps", "20 s"], /mend the drive of --trace/],
  [
    ["--trace", "d.csv", "--bridge-gaps", "20"],
    /^--bridge-gaps needs a time above 0 with its unit, such as "20 s"/,
  ],
  [["--trace", "d.csv", "--bridge-gaps=-3 s"], /^--bridge-gaps needs a time above 0/],
  [["--trace", "d.csv", "--lead-in", "2 mph"], /^--lead-in needs an acceleration above 0/],
])("the command line refuses mending that cannot be done: %j", (words, said) => {
  expect(() => argumentsFrom(words)).toThrow(said);
});

test("a trace too long for the case's trips is refused with what to do", async () => {
  const path = join(freshFolder(), "long.csv");
  const rows = Array.from({ length: 4000 }, (_, i) => `${i * 5},${i % 3999 === 0 ? 0 : 30}`);
  writeFileSync(path, `time [s],speed [mph]\n${rows.join("\n")}\n`);
  const said = vi.spyOn(console, "error").mockImplementation(() => {});
  const code = await demo(
    ["--trace", path, "--out", join(freshFolder(), "out")],
    AbortSignal.timeout(60_000),
  );
  const lines = said.mock.calls.map(([line]) => String(line));
  said.mockRestore();
  expect(code).toBe(2);
  expect(lines[0]).toMatch(/^week\.days\[0\]: expected "long\.csv" to start after "long\.csv" has ended/);
  expect(lines.at(-1)).toContain("trips start further apart");
});
