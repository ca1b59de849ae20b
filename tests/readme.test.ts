import { execFileSync, spawnSync } from "node:child_process";
import {
  cpSync,
  mkdirSync,
  mkdtempSync,
  readdirSync,
  readFileSync,
  realpathSync,
  rmSync,
  symlinkSync,
  writeFileSync,
} from "node:fs";
import { createRequire } from "node:module";
import { tmpdir } from "node:os";
import { dirname, join } from "node:path";
import { pathToFileURL } from "node:url";
import { expect, test } from "vitest";
import { cautions } from "../demos/report/cautions.ts";
import { readCase } from "../src/inputs/case.ts";
import { readVisit } from "../src/inputs/visit.ts";
import { traceFromCsv } from "../src/inputs/csv.ts";
import { caseData } from "../src/inputs/files.ts";

const root = join(import.meta.dirname, "..");
const readme = readFileSync(join(root, "README.md"), "utf8");

/** The package as `npm pack` makes it from a copy of this folder, unpacked into a program's node_modules beside what it needs. */
function installed(): string {
  const folder = mkdtempSync(join(tmpdir(), "sumpfall-installed-"));
  const copy = join(folder, "copy");
  const kept = ["package.json", "README.md", "LICENSE", "CHANGELOG.md", "src", "reference-data"];
  for (const name of [...kept, ...readdirSync(root).filter((file) => /^tsconfig.*json$/.test(file))])
    cpSync(join(root, name), join(copy, name), { recursive: true });
  const packages = realpathSync(join(root, "node_modules"));
  symlinkSync(packages, join(copy, "node_modules"));
  const packed = spawnSync("npm", ["pack", "--silent", "--offline", "--pack-destination", folder], {
    cwd: copy,
    encoding: "utf8",
  });
  expect(packed.status, packed.stderr).toBe(0);
  const program = join(folder, "program");
  const own = join(program, "node_modules/sumpfall");
  mkdirSync(own, { recursive: true });
  execFileSync("tar", [
    "-xzf",
    join(folder, packed.stdout.trim().split("\n").at(-1)!),
    "-C",
    own,
    "--strip-components=1",
  ]);
  const { dependencies } = JSON.parse(readFileSync(join(own, "package.json"), "utf8")) as {
    dependencies: object;
  };
  for (const name of Object.keys(dependencies)) {
    mkdirSync(dirname(join(program, "node_modules", name)), { recursive: true });
    symlinkSync(join(packages, name), join(program, "node_modules", name));
  }
  rmSync(copy, { recursive: true });
  return program;
}

test(
  "the README's examples run from the installed package and reach their ends",
  { timeout: 900_000 },
  () => {
    const examples = [...readme.matchAll(/```ts\n([\s\S]*?)```/g)].map(([, text]) => text!);
    const program = installed();
    const ran = (example: string): string => {
      const file = join(program, "example.mts");
      writeFileSync(file, example);
      const tsx = createRequire(import.meta.url).resolve("tsx");
      const { stderr, stdout } = spawnSync(process.execPath, ["--import", pathToFileURL(tsx).href, file], {
        cwd: program,
        encoding: "utf8",
      });
      expect(stderr).toBe("");
      return stdout;
    };
    try {
      writeFileSync(join(program, "package.json"), '{ "type": "module" }');
      expect(examples).toHaveLength(2);
      expect(ran(examples[0]!)).toMatch(/leak opens[\s\S]*no drive[\s\S]*kiss pressure \d+ kPa/);
      // With the fewest guesses that are taken: it is asked whether the words still fit the program, not what comes out.
      expect(examples[1]).toContain("\n  seed,\n");
      const quick = examples[1]!.replace("\n  seed,\n", "\n  guesses: 1000,\n  seed,\n");
      expect(ran(quick)).toMatch(/\d %[\s\S]*100 %[\s\S]*cause: 'slow leak'/);
    } finally {
      rmSync(dirname(program), { recursive: true });
    }
  },
);

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

test("the README's visit is the shipped one, and is read as it stands", () => {
  const [, visit] = [...readme.matchAll(/```json\n([\s\S]*?)```/g)].map(([, text]) => text!);
  const { about: _, ...shipped } = caseData(join(root, "reference-data/visits/three-facts.json")) as {
    about: string;
  };
  expect(JSON.parse(visit!)).toEqual(shipped);
  const build = (caseData(join(root, "reference-data/cases/demo.json")) as { build: unknown }).build;
  expect(readVisit(JSON.parse(visit!), build).visit.evidence).toHaveLength(2);
});

test("the README warns of all that the report warns of", () => {
  const said = readme.slice(readme.indexOf("## Cautions")).toLowerCase();
  for (const words of cautions.flatMap((caution) => caution.toLowerCase().match(/[a-z']{6,}/g)!))
    expect(said).toContain(words);
});
