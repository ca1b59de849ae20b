// A week that is prepared once and kept: it takes tens of seconds, and hangs on nothing but the unit, the week and the program.

import { createHash, randomUUID } from "node:crypto";
import { mkdirSync, readFileSync, readdirSync, renameSync, rmSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { deserialize, serialize } from "node:v8";
import type { Week } from "../../src/driving/pattern.ts";
import type { AirRange } from "../../src/duty/prepare.ts";
import { prepareWeek, type PrepareOptions } from "../../src/duty/prepare-week.ts";
import type { Prepared } from "../../src/duty/prepared.ts";
import { airOf } from "../../src/lookback/air.ts";
import type { Visit } from "../../src/lookback/visit.ts";
import type { Unit } from "../../src/physics/build.ts";

/** All that a prepared week hangs on. */
interface Given {
  readonly unit: Unit;
  readonly week: Week;
  readonly air: AirRange;
}

/** From the folder of kept weeks if it is there, else prepared on all cores, and kept. */
export async function preparedWeek(
  visit: Visit,
  folder: string,
  { onProgress, signal }: Required<Pick<PrepareOptions, "onProgress" | "signal">>,
): Promise<Prepared> {
  const given: Given = { unit: visit.unit, week: visit.week, air: airOf(visit) };
  const file = join(folder, `${keyOf(given)}.week`);
  const kept = keptIn(file);
  if (kept !== null) return kept;
  const prepared = await prepareWeek(given.unit, given.week, { within: given.air, onProgress, signal });
  keep(folder, file, prepared);
  return prepared;
}

/** All that a prepared week hangs on: the unit, its trips, its air, and every file of the program that prepares it. */
function keyOf(given: Given): string {
  const hash = createHash("sha256");
  hash.update(serialize(given));
  const source = join(import.meta.dirname, "../../src");
  for (const room of ["physics", "driving", "history", "duty"])
    for (const name of readdirSync(join(source, room), { recursive: true, encoding: "utf8" }).sort())
      if (name.endsWith(".ts")) hash.update(name).update(readFileSync(join(source, room, name)));
  return hash.digest("hex").slice(0, 32);
}

/** What is torn or of another program is as good as none: it is prepared anew. */
function keptIn(file: string): Prepared | null {
  try {
    return deserialize(readFileSync(file)) as Prepared;
  } catch {
    return null;
  }
}

/** Written whole or not at all; without room for it the next run prepares again. */
function keep(folder: string, file: string, prepared: Prepared): void {
  const temporary = join(folder, `.${randomUUID()}.tmp`);
  try {
    mkdirSync(folder, { recursive: true });
    writeFileSync(temporary, serialize(prepared), { flag: "wx", flush: true });
    renameSync(temporary, file);
  } catch (error) {
    rmSync(temporary, { force: true });
    console.error(`The prepared week could not be kept in ${folder}: ${String(error)}`);
  }
}
