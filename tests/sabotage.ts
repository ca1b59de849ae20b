// Proves that the tests notice: puts one fault at a time into a throw-away copy of the tree and runs the tests that ought to fail.
// `npm run sabotage` prints who caught what and ends with "N caught, N missed"; it fails when a fault was missed.
// A fault counts as caught only by a named test that passes without it.
import { spawn } from "node:child_process";
import { cpSync, mkdtempSync, readFileSync, rmSync, symlinkSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { chainMutations } from "./sabotage/chain.ts";
import { decidingMutations } from "./sabotage/deciding.ts";
import { flowMutations } from "./sabotage/flows.ts";
import { linkMutations } from "./sabotage/links.ts";
import { mutated, type Mutation } from "./sabotage/mutation.ts";

const root = join(import.meta.dirname, "..");
const copied = [
  "src",
  "tests",
  "reference-data",
  "types",
  "package.json",
  "tsconfig.json",
  "vitest.config.ts",
];
const atOnce = 2;
const longest = 120_000; // ms; a fault that hangs its tests is not caught by a name

const wanted = process.argv.slice(2); // words of links or faults, to run only those
const mutations: readonly Mutation[] = [
  ...linkMutations,
  ...chainMutations,
  ...flowMutations,
  ...decidingMutations,
].filter(({ link, what }) => wanted.length === 0 || wanted.some((word) => `${link}: ${what}`.includes(word)));

interface Report {
  readonly testResults: readonly {
    readonly assertionResults: readonly { readonly fullName: string; readonly status: string }[];
  }[];
}

/** Names of the tests that fail in a copy. */
async function failing(
  copy: string,
  tests: readonly string[],
  workers: number,
  bail: number,
): Promise<string[]> {
  const output = join(copy, "report.json");
  rmSync(output, { force: true });
  const runner = join(root, "node_modules/vitest/vitest.mjs");
  const reporting = ["--reporter=json", `--outputFile=${output}`, "--cache=false", `--bail=${bail}`];
  const running = ["--project", "library", "--pool=threads", "--no-isolate", `--maxWorkers=${workers}`];
  await new Promise<void>((done) => {
    const child = spawn(process.execPath, [runner, "run", ...running, ...reporting, ...tests], {
      cwd: copy,
      stdio: "ignore",
      detached: true,
    });
    const late = setTimeout(() => process.kill(-child.pid!, "SIGKILL"), longest);
    child.on("close", () => {
      clearTimeout(late);
      done();
    });
  });
  let report: Report;
  try {
    report = JSON.parse(readFileSync(output, "utf8")) as Report;
  } catch {
    return [];
  }
  return report.testResults.flatMap(({ assertionResults }) =>
    assertionResults.filter(({ status }) => status === "failed").map(({ fullName }) => fullName),
  );
}

const folder = mkdtempSync(join(tmpdir(), "sumpfall-sabotage-"));
process.on("exit", () => rmSync(folder, { recursive: true, force: true }));
process.on("SIGINT", () => process.exit(130));
process.on("SIGTERM", () => process.exit(143));

function copyOfTree(name: string): string {
  const copy = join(folder, name);
  for (const path of copied) cpSync(join(root, path), join(copy, path), { recursive: true });
  symlinkSync(join(root, "node_modules"), join(copy, "node_modules"));
  return copy;
}

const copies = Array.from({ length: atOnce }, (_, i) => copyOfTree(`copy-${i}`));
// Every text to be changed must be there, before time is spent on the first.
const lost = mutations.flatMap((mutation) => {
  try {
    mutated(mutation, readFileSync(join(folder, "copy-0/src", mutation.file), "utf8"));
    return [];
  } catch (error) {
    return [String(error)];
  }
});
if (lost.length > 0) {
  console.error(lost.join("\n"));
  process.exit(1);
}

console.error("without any fault: running all tests that are asked");
const asked = [...new Set(mutations.flatMap(({ tests }) => tests))];
const already = new Set(await failing(copies[0]!, asked, atOnce, 0));
for (const name of already) console.error(`fails without any fault: ${name}`);

const caughtBy = new Map<Mutation, string>();
const queue = [...mutations];
let tried = 0;

async function work(copy: string): Promise<void> {
  for (let mutation = queue.shift(); mutation !== undefined; mutation = queue.shift()) {
    const path = join(copy, "src", mutation.file);
    const sound = readFileSync(path, "utf8");
    writeFileSync(path, mutated(mutation, sound));
    const failed = await failing(copy, mutation.tests, 1, already.size + 1);
    writeFileSync(path, sound);
    const name = failed.find((test) => !already.has(test));
    if (name !== undefined) caughtBy.set(mutation, name);
    tried++;
    const verdict = name === undefined ? "MISSED" : "caught";
    console.error(`[${tried}/${mutations.length}] ${verdict}: ${mutation.link}: ${mutation.what}`);
  }
}
await Promise.all(copies.map(work));

const rows = mutations.map((mutation) => [
  mutation.link,
  mutation.what,
  caughtBy.get(mutation) ?? "MISSED: no test failed",
]);
const head = ["link", "fault", "the test that failed"];
const widths = [0, 1].map((i) => Math.max(...[head, ...rows].map((row) => row[i]!.length)));
for (const row of [head, ...rows]) console.log(row.map((cell, i) => cell.padEnd(widths[i] ?? 0)).join("  "));
const missed = mutations.length - caughtBy.size;
console.log(`${caughtBy.size} caught, ${missed} missed`);
if (missed > 0 || already.size > 0 || mutations.length === 0) process.exitCode = 1;
