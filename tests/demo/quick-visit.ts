// A visit whose week is prepared in seconds: one short round, every other day.
import { writeFileSync } from "node:fs";
import { join } from "node:path";

export function quickVisit(folder: string, changes: object = {}): string {
  const data = {
    name: "a quick visit",
    about: "Invented <for> a test.",
    leak: { place: "supply-line" },
    week: {
      trips: [
        { schedule: "parcel round", days: ["Mon", "Wed", "Fri"], at: "07:30", seed: 1, duration: "10 min" },
      ],
    },
    surroundings: { meanTemperature: "15 degC", yearlySwing: "0 K" },
    lastFull: { date: "2024-08-05", odometer: "60000 mi", checked: "hot dipstick" },
    visit: { date: "2024-10-14", odometer: "60330 mi" },
    topUps: [{ on: "2024-10-01", volume: "0.5 qt" }],
    evidence: [
      { kind: "fluid missing", volume: "1 qt" },
      { kind: "drops", count: 40, time: "1 min", engine: "idling hot" },
      { kind: "looked", on: "2024-08-26", how: "walk round", seen: false },
    ],
    ...changes,
  };
  const path = join(folder, "visit.json");
  writeFileSync(path, JSON.stringify(data));
  return path;
}
