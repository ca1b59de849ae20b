// The laws with a range, as rows of the table in DEVELOPERS.md: law, file, where it holds, who says so.
import { readdirSync } from "node:fs";
import { join } from "node:path";
import { pathToFileURL } from "node:url";
import type { Range } from "../src/errors.ts";

const src = join(import.meta.dirname, "../src");
/** Rooms that hold laws, and how the table names their files. */
const rooms = { physics: "", decisions: "decisions/" };

const isRange = (value: unknown): value is Range =>
  typeof value === "object" && value !== null && "law" in value && "quantity" in value && "source" in value;

/** 1e-7, 0.15, 253.15: as few digits as say it. */
const short = (value: number) =>
  (value !== 0 && (Math.abs(value) >= 1e5 || Math.abs(value) < 1e-3)
    ? value.toExponential()
    : String(+value.toPrecision(6))
  ).replace("e+", "e");

/** Every row, by file. */
export async function lawRows(): Promise<string[]> {
  const rows: string[] = [];
  for (const [room, named] of Object.entries(rooms)) {
    const files = readdirSync(join(src, room), { recursive: true, encoding: "utf8" })
      .filter((name) => name.endsWith(".ts"))
      .map((name) => name.replaceAll("\\", "/"))
      .sort();
    for (const file of files) {
      const module = (await import(pathToFileURL(join(src, room, file)).href)) as Record<string, unknown>;
      for (const { law, quantity, unit, low, high, source } of Object.values(module).filter(isRange))
        rows.push(
          `| ${law} | \`${named}${file}\` | ${quantity} ${short(low)} to ${short(high)}${unit === "1" ? "" : ` ${unit}`} | ${source} |`,
        );
    }
  }
  return rows;
}
