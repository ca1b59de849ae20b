// Drives the full van 100,000 miles of hard parcel rounds in winter, or the full taxi as far in its shifts, and says what
// happened: some minutes. Run by `npx tsx tests/hundred-thousand-miles.ts [taxi]`; ends with code 1 when there was air, a flare,
// a slip or a lost drive.
// Worn linings are no fault at that age: damage 0.1 and 0.5 may come.
import { simulate } from "../src/history/simulate.ts";
import { celsius, days, plan, rounds, shifts, taxi, van } from "./emerge/van.ts";

const METRES = 100_000 * 1609.344;
const driver = { hardness: 1, hilliness: 1 };
const [unit, week] =
  process.argv[2] === "taxi"
    ? [taxi, shifts([6, 11, 16.5], { ...driver, duration: 12600 }, 100)]
    : [van, rounds([7.5, 13], { ...driver, duration: 2400 }, 100)];
const everyMonth = 30;

let told = 0;
const history = simulate(
  plan(unit, week, celsius(-5), { span: days(365 * 12) }),
  (_, { distance, clock, trim }) => {
    const day = Math.round(clock / 86400);
    if (day >= told + 12 * everyMonth) {
      told = day;
      console.log(`day ${day}: ${Math.round(distance / 1609.344)} mi, trim ${(trim / 1000).toFixed(1)} kPa`);
    }
    return distance < METRES;
  },
);

const gas = Math.max(...history.trips.map(({ mostGas }) => mostGas));
const margin = Math.min(...history.trips.map(({ leastMargin }) => leastMargin));
const slip = history.trips.reduce((sum, { slipEnergy }) => sum + slipEnergy, 0);
for (const { name, clock, running, clutch } of history.events)
  console.log(
    `${name} ${clutch ?? ""} on day ${(clock / 86400).toFixed(1)}, after ${(running / 3600).toFixed(1)} h`,
  );
for (const { name, damage, glazed, worn, hottest } of history.clutches)
  console.log(
    `${name}: damage ${damage.toFixed(3)}, glazed ${glazed.toFixed(3)}, worn ${(worn * 1e6).toFixed(0)} um, hottest ${(hottest - 273.15).toFixed(0)} degC`,
  );
console.log(
  `${(history.end.distance / 1609.344).toFixed(0)} mi in ${(history.end.running / 3600).toFixed(0)} running hours; most gas ` +
    `${(100 * gas).toFixed(2)} %, least margin ${margin.toFixed(2)}, slip ${slip.toFixed(0)} J, trim ${history.end.trim.toFixed(0)} Pa, ` +
    `fluid age ${history.end.fluidAge.toFixed(2)}, closure ${Object.values(history.closure)
      .map((share: number) => share.toExponential(1))
      .join(" ")}`,
);
const faults = history.events.filter(({ name }) => name !== "damage 0.1" && name !== "damage 0.5");
process.exitCode = history.end.distance >= METRES && faults.length === 0 ? 0 : 1;
