// What no transmission can be, although every number by itself could: parts that do not fit each other.
// A rule is tried only when the parts that it looks at were read; a number that could not be read passes every rule.

import { isCoded } from "../errors.ts";
import { assemblyFaults, checkDualSun } from "../physics/load/planetary.ts";
import { panCapacity } from "../physics/sump/pan.ts";
import { given } from "../units/parse.ts";
import type { FaultList } from "./fault-list.ts";
import { isElement, namesHeld, trainGear, trainGearNames, type PlainBuild, type PlainGear } from "./gears.ts";

type Part = keyof PlainBuild;
interface Rule {
  readonly needs: readonly Part[];
  readonly check: (build: PlainBuild, list: FaultList) => void;
}

const mm = (metres: number) => `${round(metres * 1e3)} mm`;
const litres = (volume: number) => `${round(volume * 1e3)} L`;
const kPa = (pressure: number) => `${round(pressure / 1e3)} kPa`;
const kmh = (speed: number) => `${round(speed * 3.6)} km/h`;
const degC = (temperature: number) => `${round(temperature - 273.15)} degC`;
const rpm = (speed: number) => `${round((speed * 30) / Math.PI)} rpm`;
const round = (value: number) => Number(value.toPrecision(4));

/** Adds every contradiction of the parts that are `there`; paths begin with `build.`. */
export function buildContradictions(
  build: Partial<PlainBuild>,
  there: (part: Part) => boolean,
  list: FaultList,
): void {
  const at: FaultList = {
    ...list,
    want: (holds, path, ...words) => list.want(holds, `build.${path}`, ...words),
  };
  for (const { needs, check } of rules) if (needs.every(there)) check(build as PlainBuild, at);
}

const rules: readonly Rule[] = [
  {
    needs: ["sump"],
    check({ sump: { pan, pickup, stick, overflow } }, { want }) {
      want(
        !(pickup.height >= pan.height),
        "sump.pickup.height",
        `a mouth below the top of the pan (${mm(pan.height)})`,
        mm(pickup.height),
        '"8 mm"',
      );
      for (const [name, place] of Object.entries({ pickup, stick, overflow })) {
        want(
          !(place.x > pan.length),
          `sump.${name}.x`,
          `a place in the pan (${mm(pan.length)} long)`,
          mm(place.x),
          '"190 mm"',
        );
        want(
          !(place.y > pan.width),
          `sump.${name}.y`,
          `a place in the pan (${mm(pan.width)} wide)`,
          mm(place.y),
          '"160 mm"',
        );
      }
      want(
        !(pickup.weirGas < pickup.baseGas),
        "sump.pickup.weirGas",
        "no less gas than baseGas",
        String(pickup.weirGas),
        "0.05",
      );
      want(
        !(stick.low >= stick.full),
        "sump.stick.low",
        `a low mark below the full mark (${mm(stick.full)})`,
        mm(stick.low),
        '"50 mm"',
      );
      want(
        !(stick.full > pan.height),
        "sump.stick.full",
        `a full mark in the pan (${mm(pan.height)} high)`,
        mm(stick.full),
        '"55 mm"',
      );
      want(
        !(overflow.height > pan.height),
        "sump.overflow.height",
        `an overflow in the pan (${mm(pan.height)} high)`,
        mm(overflow.height),
        '"50 mm"',
      );
    },
  },
  {
    needs: ["holdUp", "fill", "sump"],
    check({ fill, holdUp, sump: { pan } }, { want }) {
      const away = holdUp.converter + holdUp.coolerAndLines + holdUp.passages;
      want(
        !(away >= fill),
        "holdUp",
        `converter, lines and passages together to hold less than the fill (${litres(fill)})`,
        litres(away),
      );
      const room = panCapacity(pan) + away;
      want(
        !(fill > room),
        "fill",
        `no more than the pan and the hold-ups take (${litres(room)})`,
        litres(fill),
        '"11 L"',
      );
    },
  },
  {
    needs: ["clutches", "lockUp", "regulator"],
    check({ clutches, lockUp, regulator }, { want }) {
      const rings = [
        ...clutches.map((clutch, i) => ({ path: `clutches[${i}]`, clutch })),
        { path: "lockUp.clutch", clutch: lockUp.clutch },
      ];
      for (const { path, clutch } of rings)
        want(
          !(clutch.inner >= clutch.outer),
          `${path}.inner`,
          `a radius below the outer one (${mm(clutch.outer)})`,
          mm(clutch.inner),
        );
      clutches.forEach(({ spring, pistonArea, name }, i) => {
        const kiss = spring / pistonArea;
        const expected = `a spring that the base line pressure (${kPa(regulator.base)}) overcomes`;
        want(
          !(kiss >= regulator.base),
          `clutches[${i}].spring`,
          expected,
          `a kiss pressure of ${kPa(kiss)} at the ${name}`,
        );
      });
      const spring = lockUp.clutch.spring / lockUp.clutch.pistonArea;
      want(
        !(spring >= lockUp.most),
        "lockUp.clutch.spring",
        `a spring that the apply pressure (${kPa(lockUp.most)}) overcomes`,
        kPa(spring),
      );
      want(
        !(regulator.most < regulator.base),
        "regulator.most",
        `no less than the base pressure (${kPa(regulator.base)})`,
        kPa(regulator.most),
      );
    },
  },
  { needs: ["clutches", "gears", "reverse"], check: clutchesAndGears },
  { needs: ["gears", "reverse", "gearTrain"], check: gearsByTeeth },
  { needs: ["gearTrain"], check: teeth },
  {
    needs: ["lockUp", "gears"],
    check({ lockUp, gears }, { want }) {
      const from = gears.findIndex(({ name }) => name === lockUp.fromGear);
      want(
        from !== -1,
        "lockUp.fromGear",
        `the name of a gear: ${gears.map(({ name }) => name).join(", ")}`,
        given(lockUp.fromGear),
      );
      want(
        from !== 0,
        "lockUp.fromGear",
        "a gear that the vehicle does not start in: locked, the engine would stall",
        given(lockUp.fromGear),
      );
      want(
        !(lockUp.onAbove <= 0),
        "lockUp.onAbove",
        "a speed above standstill: locked, the engine would stall",
        kmh(lockUp.onAbove),
        '"60 km/h"',
      );
      want(
        !(lockUp.offBelow <= 0),
        "lockUp.offBelow",
        "a speed above standstill: locked, the engine would stall",
        kmh(lockUp.offBelow),
        '"52 km/h"',
      );
      want(
        !(lockUp.offBelow >= lockUp.onAbove),
        "lockUp.offBelow",
        `a speed below onAbove (${kmh(lockUp.onAbove)})`,
        kmh(lockUp.offBelow),
        '"52 km/h"',
      );
    },
  },
  {
    needs: ["shiftPlan", "gears"],
    check({ shiftPlan: { up, down }, gears }, { want }) {
      const pairs = gears.length - 1;
      want(
        up.length === pairs,
        "shiftPlan.up",
        `${pairs} speeds, one for each pair of neighbouring gears`,
        `${up.length}`,
      );
      want(
        down.length === pairs,
        "shiftPlan.down",
        `${pairs} speeds, one for each pair of neighbouring gears`,
        `${down.length}`,
      );
      down.forEach((speed, i) =>
        want(
          !(speed >= up[i]!),
          `shiftPlan.down[${i}]`,
          `a speed below the one for shifting up (${kmh(up[i]!)})`,
          kmh(speed),
        ),
      );
      up.forEach((speed, i) =>
        want(
          i === 0 || !(speed <= up[i - 1]!),
          `shiftPlan.up[${i}]`,
          `a speed above the shift before (${kmh(up[i - 1] ?? 0)})`,
          kmh(speed),
        ),
      );
    },
  },
  {
    needs: ["engine"],
    check({ engine }, { want }) {
      want(
        !(engine.ratedSpeed <= engine.idleSpeed),
        "engine.ratedSpeed",
        `a speed above idle (${rpm(engine.idleSpeed)})`,
        rpm(engine.ratedSpeed),
      );
    },
  },
  {
    needs: ["cooler"],
    check({ cooler: { bypassCold, bypassHot } }, { want }) {
      want(
        !(bypassHot <= bypassCold),
        "cooler.bypassHot",
        `a temperature above bypassCold (${degC(bypassCold)})`,
        degC(bypassHot),
        '"80 degC"',
      );
    },
  },
  {
    needs: ["heat"],
    check({ heat: { lubrication: film } }, { want }) {
      want(
        !(film.fullCoefficient < film.airCoefficient),
        "heat.lubrication.fullCoefficient",
        "no less than what air alone does",
        String(film.fullCoefficient),
      );
    },
  },
];

function clutchesAndGears({ clutches, gears, reverse }: PlainBuild, { want }: FaultList): void {
  const names = clutches.map(({ name }) => name);
  const all = [
    ...gears.map((gear, i) => ({ path: `gears[${i}]`, gear })),
    { path: "reverse", gear: reverse },
  ];
  names.forEach((name, i) => {
    want(names.indexOf(name) === i, `clutches[${i}].name`, "a name that no other clutch has", given(name));
    want(
      all.some(({ gear }) => namesHeld(gear).includes(name)),
      `clutches[${i}].name`,
      "a clutch that holds in some gear",
      `${given(name)}, which no gear names`,
    );
  });
  all.forEach(({ path, gear }, i) => {
    namesHeld(gear).forEach((name, j) =>
      want(
        names.includes(name),
        `${path}.holds[${j}]`,
        `the name of a clutch: ${names.join(", ")}`,
        given(name),
      ),
    );
    want(
      all.findIndex((other) => other.gear.name === gear.name) === i,
      `${path}.name`,
      "a name that no other gear has",
      given(gear.name),
    );
    if ("ratio" in gear)
      want(
        !(path === "reverse" ? gear.ratio >= 0 : gear.ratio <= 0),
        `${path}.ratio`,
        path === "reverse" ? "a ratio below 0: it backs up" : "a ratio above 0",
        String(gear.ratio),
      );
  });
}

function gearsByTeeth({ gears, reverse, gearTrain }: PlainBuild, { want }: FaultList): void {
  gears.forEach((gear, i) => byTeeth(`gears[${i}]`, gear, gearTrain, want));
  byTeeth("reverse", reverse, gearTrain, want);
}

// A gear without a ratio takes it from the teeth, so it must be one that the train has, held as the train holds it.
function byTeeth(
  path: string,
  gear: PlainGear,
  train: PlainBuild["gearTrain"],
  want: FaultList["want"],
): void {
  if ("ratio" in gear) return;
  const known = trainGear(train, gear.name);
  want(
    known !== undefined,
    `${path}.name`,
    `a gear of the train (${trainGearNames(train).join(", ")}), or a ratio with shares`,
    given(gear.name),
  );
  if (known === undefined) return;
  want(
    (gear.name === "R") === (path === "reverse"),
    `${path}.name`,
    path === "reverse" ? "R" : "a forward gear",
    given(gear.name),
  );
  const wanted = known.elements;
  const same = wanted.length === gear.holds.length && wanted.every((name) => gear.holds.includes(name));
  want(
    !gear.holds.every(isElement) || same,
    `${path}.holds`,
    `what holds this gear in the train: ${wanted.join(", ")}`,
    gear.holds.join(", "),
  );
}

// Tooth counts that cannot be put together. A count that could not be read has its own fault already.
function teeth({ gearTrain: { front, rear, final } }: PlainBuild, list: FaultList): void {
  const add = (
    path: string,
    { expected, given: what, example }: { expected: string; given: string; example: string },
  ) => list.want(false, path, expected, what, example);
  if (front && ![front.sun, front.ring, front.planets].some(Number.isNaN))
    for (const fault of assemblyFaults("gearTrain.front", front, front.planets)) add(fault.path, fault);
  if (![rear.smallSun, rear.largeSun, rear.ring, rear.planets].some(Number.isNaN))
    try {
      checkDualSun("gearTrain.rear", rear, rear.planets);
    } catch (error) {
      if (!isCoded(error)) throw error;
      for (const fault of error.faults) add(fault.path, fault);
    }
  list.want(
    !(final.ring < final.pinion),
    "gearTrain.final.ring",
    `no fewer teeth than the pinion (${final.pinion})`,
    String(final.ring),
  );
}
