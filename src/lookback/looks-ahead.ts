// Looks that have not been made: what each costs in time, how closely it tells, and what a guess foretells that it will show.

import { at } from "./shown.ts";
import { AILS, flowAt, heldAt, missingAt, type Asked } from "./terms.ts";

/** One look. `error` is that of its reading (SI, or natural logarithm); null: it answers yes or no, and `foretell` gives the chance of a yes. */
export interface LookAhead {
  readonly name: string;
  /** What is done, in a technician's words. */
  readonly says: string;
  /** Minutes of work: common practice for a vehicle that stands in the bay. */
  readonly minutes: number;
  readonly error: number | null;
  /** It asks for the date of a symptom, which a cause that comes of itself does not foretell. */
  readonly ofSymptoms?: true;
  /** It runs the engine: not for a vehicle whose line let go or that no longer drives. */
  readonly runsEngine?: true;
  readonly foretell: (asked: Asked) => number;
}

const minute = 60;
const day = 86400;
/** Somebody who never saw it answers "never", which is told apart from every date: as if it came so long after the visit [s]. */
const NEVER = 60 * day;
/** Flows below a drop in an hour are as good as dry [m³/s]. */
const DRY = 0.04e-6 / 3600;
/** A test that answers yes or no is wrong in so many cases. */
const WRONG = 0.03;

const logFlow = (flow: number) => Math.log(Math.max(flow, DRY));
const dated = (asked: Asked, clock: number) => Math.min(clock, asked.visit.at + NEVER);
const sure = (yes: boolean) => (yes ? 1 - WRONG : WRONG);
/** Chance that harm is found: foretold of a leak that grew, a guess of what ails otherwise or came at once. */
const harm = (asked: Asked, name: "damage 0.1" | "damage 1") =>
  asked.ails || asked.sudden ? AILS : sure(asked.course().when(name) < Infinity);
const now = ({ visit }: Asked) => visit.at;

/** Errors and minutes are assumed from common practice in the bay; nobody has published them. */
export const looksAhead: readonly LookAhead[] = [
  {
    name: "measure what is missing",
    runsEngine: true,
    says: "warm it up, level it and measure how much goes in until the level is right",
    minutes: 30,
    error: 0.1e-3,
    foretell: (asked) => missingAt(asked, now(asked)),
  },
  {
    name: "catch the drip",
    runsEngine: true,
    says: "catch what drips in a graduated cup for half an hour, idling hot",
    minutes: 40,
    error: 0.07,
    foretell: (asked) => (asked.unseen ? logFlow(0) : logFlow(flowAt(asked, now(asked), "idling hot"))),
  },
  {
    name: "count drops, parked",
    says: "count drops for ten minutes with the engine off",
    minutes: 12,
    error: 0.25,
    foretell: (asked) => (asked.unseen ? logFlow(0) : logFlow(flowAt(asked, now(asked), "parked"))),
  },
  {
    name: "empty the shield",
    says: "take the shield off, wring out and weigh what it holds",
    minutes: 25,
    error: 0.03e-3,
    foretell: (asked) => heldAt(asked, now(asked)) / asked.shown.bay.density,
  },
  {
    name: "line pressure",
    runsEngine: true,
    says: "read line pressure at the tap, idling hot in drive",
    minutes: 15,
    error: 8e3,
    foretell: (asked) => asked.weakness * at(asked.shown.linePressure, missingAt(asked, now(asked))),
  },
  {
    name: "ask about the first spot",
    says: "ask when the first spot was seen on the ground",
    minutes: 3,
    error: 5 * day,
    foretell: (asked) =>
      dated(asked, asked.unseen ? Infinity : asked.course().when("first spot on the ground")),
  },
  {
    name: "ask about the first slip",
    ofSymptoms: true,
    says: "ask when it first flared or slipped",
    minutes: 3,
    error: 5 * day,
    foretell: (asked) =>
      dated(asked, Math.min(asked.course().when("first flare"), asked.course().when("first sustained slip"))),
  },
  {
    name: "ask who filled it last",
    says: "ask who filled it last, how much went in and how the level was set",
    minutes: 10,
    error: 0.1e-3,
    foretell: (asked) => asked.short,
  },
  {
    name: "test the cooler",
    says: "pressure-test the cooler and look for fluid in the coolant",
    minutes: 30,
    error: null,
    foretell: (asked) => sure(asked.unseen),
  },
  {
    name: "drop the pan",
    says: "drop the pan and look at sediment and magnet",
    minutes: 45,
    error: null,
    foretell: (asked) => harm(asked, "damage 0.1"),
  },
  {
    name: "open the unit",
    says: "take the unit out and open it: is a clutch burnt?",
    minutes: 6 * minute,
    error: null,
    foretell: (asked) => harm(asked, "damage 1"),
  },
];
