// Prints every check against the outside: what is claimed, who says so, and how near the program comes.
// `npm run verify` ends with "N passed, N failed" and fails if any check does; `npm run verify -- --json` prints one JSON array,
// with `tolerance` as the largest difference allowed, in the unit of `expected`.
import { allowance, links, passes, type Check, type Kind } from "./checks/check.ts";
import { allChecks, documentOf } from "./checks/gather.ts";

interface Result {
  readonly check: Check;
  readonly got: number;
  readonly passed: boolean;
}

function resultOf(check: Check): Result {
  let got = NaN;
  try {
    got = check.got();
  } catch (error) {
    console.error(`${check.link}: ${check.claim}: ${String(error)}`);
  }
  return { check, got, passed: passes({ ...check, got: () => got }) };
}

const digits = (x: number) => String(Number(x.toPrecision(6)));

function toleranceText({ tolerance }: Check): string {
  return "relative" in tolerance
    ? `${digits(tolerance.relative * 100)} %`
    : `± ${digits(tolerance.absolute)}`;
}

/** Rows of text under each other, columns padded to their widest cell. */
function columns(rows: readonly (readonly string[])[]): string {
  const widths = rows[0]?.map((_, i) => Math.max(...rows.map((row) => row[i]?.length ?? 0))) ?? [];
  return rows
    .map((row) =>
      row
        .map((cell, i) => cell.padEnd(widths[i] ?? 0))
        .join("  ")
        .trimEnd(),
    )
    .join("\n");
}

function shares(of: (check: Check) => string): [string, number][] {
  const counts = new Map<string, number>();
  for (const { check } of results) counts.set(of(check), (counts.get(of(check)) ?? 0) + 1);
  return [...counts].sort(([, a], [, b]) => b - a);
}

const order = (check: Check) => links.indexOf(check.link);
const checks = [...(await allChecks())].sort((a, b) => order(a) - order(b));
const results = checks.map(resultOf);
const failed = results.filter(({ passed }) => !passed).length;

if (process.argv.includes("--json")) {
  const rows = results.map(({ check, got, passed }) => {
    const { claim, link, source, kind, expected } = check;
    return { claim, link, source, kind, expected, got, tolerance: allowance(check), passed };
  });
  console.log(JSON.stringify(rows, null, 1));
} else {
  const head = ["", "link", "claim", "expected", "got", "tolerance", "kind", "source"];
  const rows = results.map(({ check, got, passed }) => [
    passed ? "ok" : "FAILED",
    check.link,
    check.claim,
    digits(check.expected),
    digits(got),
    toleranceText(check),
    check.kind,
    check.source,
  ]);
  console.log(columns([head, ...rows]));

  const perLink = links.map((link) => {
    const of = results.filter(({ check }) => check.link === link);
    const kind = (kind: Kind) => String(of.filter(({ check }) => check.kind === kind).length);
    const passed = of.filter((result) => result.passed).length;
    return [link, String(of.length), String(passed), kind("published"), kind("recalled"), kind("computed")];
  });
  console.log(
    `\n${columns([["link", "checks", "passed", "published", "recalled", "computed"], ...perLink])}`,
  );
  console.log(
    `\n${columns([["kind", "checks"], ...shares(({ kind }) => kind).map(([kind, n]) => [kind, String(n)])])}`,
  );

  const sources = shares(({ source }) => documentOf(source));
  const [most, count] = sources[0] ?? ["none", 0];
  console.log(
    `\n${sources.length} distinct sources; the largest share is ${((100 * count) / results.length).toFixed(1)} %: ${most}`,
  );
  console.log(`${results.length - failed} passed, ${failed} failed`);
}
process.stdout.on("error", () => process.exit()); // the reader has had enough
if (failed > 0 || results.length === 0) process.exitCode = 1;
