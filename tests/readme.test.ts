import { spawnSync } from "node:child_process";
import { mkdtempSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { expect, test } from "vitest";

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
