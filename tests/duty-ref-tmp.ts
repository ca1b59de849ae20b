import { existsSync, readFileSync, writeFileSync } from "node:fs";
import { simulate } from "../src/history/simulate.ts";
import { drawWeek } from "./duty/cases.ts";
const file = "/tmp/duty/kept.json";
const kept: Record<string, unknown> = existsSync(file) ? JSON.parse(readFileSync(file, "utf8")) : {};
const dated = (events: readonly any[]) => events.map(({ name, clutch, running, lost }) => ({ name: clutch === undefined ? name : `${name}, ${clutch}`, running, lost }));
for (let seed = 1; seed <= 13; seed++) for (const { name, plan } of drawWeek(seed, 5).cases) {
  if (kept[name]) continue;
  kept[name] = { usual: dated(simulate(plan).events), halved: dated(simulate({ ...plan, fine: 0.025, finer: 0.01 }).events) };
  writeFileSync(file, JSON.stringify(kept));
  console.log(name, new Date().toISOString());
}
