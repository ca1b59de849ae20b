// The demo's van with a hole that empties it within a few short rounds, and what the tests of this folder vary of it.
import { caseData } from "../../src/inputs/files.ts";
import { caseFile } from "../inputs/shipped.ts";

type Data = Record<string, unknown>;

export const quickLeak: Data = {
  ...(caseData(caseFile("slow-seep")) as Data),
  leak: {
    kind: "hole",
    place: "supply-line",
    height: "60 mm",
    diameter: { value: "0.9 mm", range: ["0.7 mm", "1.1 mm"] },
    wall: "0.9 mm",
  },
  span: "4 days",
  opens: { after: "1 h" },
  week: {
    trips: [{ schedule: "parcel round", days: "every day", at: "08:30", seed: 1, duration: "8 min" }],
  },
};

/** The hole and what is not known of the pump. */
export const few = ["leak.diameter", "build.pump.slip", "build.pump.dissolved", "build.sump.pickup.height"];
