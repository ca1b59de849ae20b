// Bad input is told, one line a fault with its place and a way out; the exit code is 2 and nothing is written.
import { existsSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { describe, expect, test, vi } from "vitest";
import { caseData } from "../../src/inputs/files.ts";
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
      expect.stringMatching(/^drive\.csv line 6, time: /),
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
