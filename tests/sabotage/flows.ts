// One flow of mass or energy left out by 0.1 %: the books count it, the unit feels 0.999 of it.
import { change, type Mutation, type Place } from "./mutation.ts";

const place = (link: string, file: string): Place => ({
  link,
  file: `history/${file}`,
  tests: ["tests/history/closure"],
});
const mass = (file: string, what: string, find: string, put: string) =>
  change(place("mass", file), `${what}, 0.1 % left out`, find, put);
const energy = (file: string, what: string, find: string, put: string) =>
  change(place("energy", file), `${what}, 0.1 % left out`, find, put);

const balance = "state.energy += sums.converter + sums.pump + sums.gears + fromPlates - toAir - toCoolant;";
const inBalance = (term: string, what: string) =>
  energy("settle.ts", what, balance, balance.replace(term, `0.999 * ${term}`));

export const flowMutations: readonly Mutation[] = [
  mass("advance.ts", "leak", "state.mass -= lost;", "state.mass -= 0.999 * lost;"),
  mass("settle.ts", "leak on its way out", "lost / seconds, moving", "(0.999 * lost) / seconds, moving"),
  mass("settle.ts", "carried off", "+= step.carriedOff;", "+= 0.999 * step.carriedOff;"),
  mass(
    "settle.ts",
    "run over while driving",
    "state.onRoad += step.overflow;",
    "state.onRoad += 0.999 * step.overflow;",
  ),
  mass(
    "settle.ts",
    "run over while standing",
    "state.onGround += step.overflow;",
    "state.onGround += 0.999 * step.overflow;",
  ),
  mass("parked.ts", "leak while parked", "state.mass -= lost;", "state.mass -= 0.999 * lost;"),
  mass("parked.ts", "top-up", "state.mass += mass;", "state.mass += 0.999 * mass;"),

  inBalance("sums.converter", "converter heat"),
  inBalance("sums.pump", "pump heat"),
  inBalance("sums.gears", "gear heat"),
  inBalance("fromPlates", "heat from the plates"),
  inBalance("toAir", "heat to the air"),
  inBalance("toCoolant", "heat to the coolant"),
  energy("settle.ts", "heat of what leaks", "state.energy -= energy;", "state.energy -= 0.999 * energy;"),
  energy(
    "settle.ts",
    "slip heat into the steel",
    "const power = (made * toSteel) / seconds;",
    "const power = (0.999 * made * toSteel) / seconds;",
  ),
  energy("parked.ts", "heat lost while parked", "state.energy -= given;", "state.energy -= 0.999 * given;"),
  energy(
    "parked.ts",
    "plates cooling while parked",
    "state.energy += passed;",
    "state.energy += 0.999 * passed;",
  ),
  energy("parked.ts", "heat of a top-up", "state.energy += energy;", "state.energy += 0.999 * energy;"),
  energy(
    "shift.ts",
    "a shift's heat into the fluid",
    "state.energy += energy * (1 - toSteel);",
    "state.energy += 0.999 * energy * (1 - toSteel);",
  ),
  energy(
    "shift.ts",
    "a shift's heat into the steel",
    "+= (energy * toSteel) / steelCapacity",
    "+= (0.999 * energy * toSteel) / steelCapacity",
  ),
];
