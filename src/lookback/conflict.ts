// Evidence that no explanation can reconcile, named in pairs: each item alone has guesses that explain it, both together have none.

import { logGamma } from "../chance/terms.ts";
import type { Evidence } from "./evidence.ts";
import type { Conflict, Posterior } from "./posterior.ts";
import { measuredBy, sharedUnknowns, type SharedErrors } from "./shared.ts";
import { UNLIKE } from "./terms.ts";
import type { Answered, Task } from "./workbench.ts";

/** The gap from which two items are told to conflict: odds of one to some hundreds. */
const GAP = 6;
/** What an item that nothing explains is at odds with. */
const theVehicle = "that it came in by itself, on the vehicle as it is told";
/** Guesses with which an explanation is asked about two items alone. */
const TRIED = 150;

/**
 * Pairs that conflict. Nothing is asked as long as some guess explains everything about as well as can be; else every pair that no guess
 * reconciles is put to every explanation, without the other evidence.
 */
export async function conflictsIn(
  { bench, columns, weighed }: Posterior,
  seed: number,
  ask: (tasks: readonly Task[]) => Promise<readonly Answered[]>,
): Promise<readonly Conflict[]> {
  const { evidence } = bench.visit;
  const count = evidence.length;
  const from = columns.length - count;
  const shared = sharedUnknowns(bench.visit);
  const middling: SharedErrors = (name) => (shared.some((one) => one.name === name) ? 0 : undefined);
  const best = evidence.map((item) => bestOf(item, middling));
  const both = new Float64Array(count * count).fill(-Infinity);
  const alone = new Float64Array(count).fill(-Infinity);
  let together = -Infinity;
  for (const { runs } of weighed)
    for (const { foretold } of runs)
      for (let row = from; row < foretold.length; row += columns.length) {
        let sum = 0;
        for (let i = 0; i < count; i++) {
          sum += foretold[row + i]!;
          alone[i] = Math.max(alone[i]!, foretold[row + i]!);
          for (let j = 0; j < i; j++)
            both[i * count + j] = Math.max(both[i * count + j]!, foretold[row + i]! + foretold[row + j]!);
        }
        together = Math.max(together, sum);
      }
  const whole = best.reduce((sum, term) => sum + term, 0);
  if (whole - together < GAP) return [];
  /** The best that any explanation says of some items without the others. */
  const mostOf = async (choices: readonly (readonly number[])[]): Promise<number[]> => {
    const answers = await ask(
      choices.flatMap((only) =>
        weighed.map((_, explanation) => ({
          explanation,
          guesses: TRIED,
          moves: 2,
          seed,
          foretells: false,
          only,
        })),
      ),
    );
    return choices.map((_, c) =>
      Math.max(
        ...answers
          .slice(c * weighed.length, (c + 1) * weighed.length)
          .map(({ answer }) => answer.logLikelihood.reduce((most, log) => Math.max(most, log), -Infinity)),
      ),
    );
  };
  // First, items that nothing explains even alone: they are at odds with the vehicle as it is told, not with another item.
  const strange = [...evidence.keys()].filter((i) => best[i]! - alone[i]! > GAP);
  const mostAlone = await mostOf(strange.map((i) => [i]));
  const impossible = strange
    .map((i, s): Conflict => {
      const { name } = evidence[i]!;
      const gap = best[i]! - mostAlone[s]!;
      return {
        first: name,
        second: theVehicle,
        gap,
        wayOut: 'a wrong reading, or it no longer drove when it came ("does not move")',
      };
    })
    .filter(({ gap }) => gap > GAP);
  if (impossible.length > 0) return impossible;
  const doubtful: [number, number][] = [];
  for (let i = 0; i < count; i++)
    for (let j = 0; j < i; j++) if (best[i]! + best[j]! - both[i * count + j]! > GAP) doubtful.push([j, i]);
  const most = await mostOf(doubtful);
  const found = doubtful
    .map(([j, i], d): Conflict => {
      const [first, second] = [evidence[j]!, evidence[i]!];
      const gap = best[i]! + best[j]! - most[d]!;
      return { first: first.name, second: second.name, gap, wayOut: wayOutOf(first, second) };
    })
    .filter(({ gap }) => gap > GAP)
    .sort((a, b) => b.gap - a.gap);
  if (found.length > 0 || count < 3) return found;
  // No two of them alone, but several together: those without any one of which the rest would go together.
  const without = await mostOf(evidence.map((_, left) => [...evidence.keys()].filter((i) => i !== left)));
  const culprits = [...evidence.keys()]
    .filter((i) => whole - best[i]! - without[i]! < GAP / 2)
    .sort((a, b) => without[b]! - without[a]!);
  if (culprits.length < 2) return [];
  const [first, second, ...more] = culprits.map((i) => evidence[i]!);
  return [
    {
      first: first!.name,
      second: [second!, ...more].map(({ name }) => name).join(" with "),
      gap: whole - together,
      wayOut: wayOutOf(first!, second!),
    },
  ];
}

/** The best that any guess could say of an item: a measurement foretold exactly, a count as expected, else certainty. */
function bestOf(item: Evidence, middling: SharedErrors): number {
  if (item.kind === "drops")
    return item.count === 0 ? 0 : item.count * Math.log(item.count) - item.count - logGamma(item.count + 1);
  if (item.kind === "off the dipstick" || !("error" in item)) return 0;
  const error =
    item.kind === "line pressure"
      ? Math.hypot(item.error, UNLIKE * item.pressure)
      : item.kind === "fluid missing" || item.kind === "fluid drained"
        ? Math.hypot(
            measuredBy(item.by, item.error, middling).error,
            "staysError" in item ? item.staysError : 0,
          )
        : item.error;
  return -Math.log(error * Math.sqrt(2 * Math.PI));
}

/** Within such a time the level hardly changes [s]. */
const SAME_TIME = 86400;

/** What a reading measures, alike for two that measure the same; null for what is no reading. */
function measures(item: Evidence): string | null {
  switch (item.kind) {
    case "fluid missing":
    case "fluid drained":
      return "what is missing";
    case "drops":
      return `drops, ${item.moment}`;
    case "learned fill":
    case "teardown":
      return `${item.kind} of the ${item.clutch}`;
    case "dipstick":
    case "off the dipstick":
      return "the level at the stick";
    case "line pressure":
    case "cooler flow":
    case "sediment":
    case "learned trim":
    case "fluid in the coolant":
      return item.kind;
    default:
      return null;
  }
}

/** Whether two items are readings of the same thing at about the same time. */
function readTwice(a: Evidence, b: Evidence): boolean {
  const what = measures(a);
  return what !== null && what === measures(b) && "at" in a && "at" in b && Math.abs(a.at - b.at) < SAME_TIME;
}

/** All that tells of what is missing. */
const levels: readonly Evidence["kind"][] = [
  "fluid missing",
  "fluid drained",
  "dipstick",
  "off the dipstick",
];

/** What would reconcile two items, by their kinds. */
function wayOutOf(a: Evidence, b: Evidence): string {
  if (readTwice(a, b)) return "one of the two readings is wrong";
  const kinds = [a.kind, b.kind];
  const has = (...some: Evidence["kind"][]) => some.some((kind) => kinds.includes(kind));
  const isLevel = ({ kind }: Evidence) => levels.includes(kind);
  const volume = has(...levels);
  if (has("drops") && has("known full"))
    return "fluid added that nobody told of, or drops counted at another vehicle's place";
  if (isLevel(a) && isLevel(b))
    return "a level read cold or after a stand, a wrong reading, or fluid added between them that nobody told of";
  if (volume && has("drops")) return "a second leak, fluid added that nobody told of, or drops counted cold";
  if (volume && has("known full")) return "a wrong fill, or a level read cold or after a stand";
  if (volume && has("line pressure", "cooler flow"))
    return "a level read cold or after a stand, or a worn pump beside the leak";
  if (has("drops") && has("first spot", "looked"))
    return "drops counted cold or at another place, or a look that missed it";
  if (has("first symptom", "not felt") && volume)
    return "fluid added that nobody told of, or a symptom with another cause";
  if (has("first spot") && has("looked")) return "a spot from another vehicle, or a look that missed it";
  return "a date that is remembered wrongly, or another cause beside the leak";
}
