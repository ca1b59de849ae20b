// In development a thread's program is TypeScript in a hundred files: made into one, it starts in a tenth of the time, and once made it is kept until any of them changes.
import { createHash, randomUUID } from "node:crypto";
import { mkdirSync, readFileSync, readdirSync, renameSync, rmSync, statSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { fileURLToPath, pathToFileURL } from "node:url";

const root = join(import.meta.dirname, "../..");
/** Beside what else is made of packages: `npm ci` throws it away. */
const kept = join(root, "node_modules/.cache/sumpfall");

/** Runs a TypeScript file (its URL) in this thread. */
export async function run(file) {
  const made = join(kept, `${nameOf(file)}.mjs`);
  try {
    await import(pathToFileURL(made).href);
  } catch (error) {
    if (error?.code !== "ERR_MODULE_NOT_FOUND") throw error;
    const program = await inOneFile(file);
    keep(made, program);
    await import(`data:text/javascript;base64,${Buffer.from(program).toString("base64")}`);
  }
}

/** All that it is made of: the file that is run, every source, and the packages. */
function nameOf(file) {
  const hash = createHash("sha256").update(file.href);
  for (const name of readdirSync(join(root, "src"), { recursive: true, encoding: "utf8" }).sort())
    if (/\.(ts|mjs)$/.test(name)) hash.update(name).update(readFileSync(join(root, "src", name)));
  return hash
    .update(readFileSync(join(root, "package-lock.json")))
    .digest("hex")
    .slice(0, 32);
}

async function inOneFile(file) {
  const { buildSync } = await import("esbuild");
  const { outputFiles } = buildSync({
    entryPoints: [fileURLToPath(file)],
    bundle: true,
    write: false,
    format: "esm",
    target: "node20",
  });
  return outputFiles[0].contents;
}

const DAYS = 7 * 86400e3;

/** Written whole or not at all, and what has not been made for a week is thrown away; where there is no room for it, it is made again. */
function keep(made, program) {
  const unfinished = `${made}.${randomUUID()}`;
  try {
    mkdirSync(kept, { recursive: true });
    for (const name of readdirSync(kept))
      if (statSync(join(kept, name)).mtimeMs < Date.now() - DAYS) rmSync(join(kept, name), { force: true });
    writeFileSync(unfinished, program, { flag: "wx" });
    renameSync(unfinished, made);
  } catch {
    // A folder that cannot be written is no reason not to work.
  }
}
