// The conditions that make events, as numbers that are above zero while they hold.

import type { Unit } from "../physics/build.ts";
import { ENGAGING, shareLeft } from "../physics/holding.ts";
import type { State } from "../physics/state.ts";
import { damageIndex } from "../physics/damage/damage-index.ts";
import { overLid } from "../physics/sump/pan.ts";
import type { Engagement } from "./shift.ts";
import type { Walk } from "./walk.ts";
import { watcher, type EventName, type Watcher } from "./watch.ts";

const RPM = Math.PI / 30;
/** Gas share at the pump that is a gulp. */
const GULP = 0.1;
/** Gap of engine speed that a driver hears as a flare [rad/s]. */
const FLARE = 200 * RPM;
/** Times into gear that are slow [s], hot and cold, and what counts as either [K]. Shops call over a second or two slow. */
const SLOW_HOT = 1.2;
const SLOW_COLD = 2;
const HOT = 333.15;
const COLD = 303.15;
/** Below this every unit takes its time [K]. */
const FROSTY = 263.15;
const CHECK_FROM = 348.15;
const CHECK_TO = 363.15;
const TOO_HOT = 403.15;
/** A steel hotter than this may char its lining within seconds [K]; well under it that takes weeks. */
const CHARS = 473.15;

export interface Measures {
  readonly watchers: readonly Watcher[];
  readonly values: Float64Array;
  readonly hottest: Float64Array;
  /** Depth at the stick at the last good look [m]; null when there was none yet. */
  level: number | null;
  /** How many of the watchers are worth a look now: the first few, which a calm unit may meet too, or all. */
  watched: number;
  take(walk: Walk, engagement: Engagement): void;
  engaged(walk: Walk, engagement: Engagement): void;
  slipInTrip(): number;
  worstDamage(): number;
}

interface Condition {
  readonly name: EventName;
  readonly says: string;
  readonly lasting: number;
  readonly measure: (walk: Walk) => number;
  readonly clutch?: string;
}

/** The first so many conditions may hold while a unit runs calmly; none of the others can. */
const CALM_CONDITIONS = 6;

/** No air, no want of pressure or feed, no slip, no heat: most of a life. */
function isCalm({ state, now, flare, heldUp }: Walk): boolean {
  const { line, drive } = now;
  return (
    state.gas <= 0.5 * GULP && // so that a look before the gulp says how near it was
    !state.slipping &&
    !heldUp &&
    flare === 0 &&
    line.linePressure >= 0.97 * now.setPoint &&
    line.feed >= 0.5 * line.feedFull &&
    !drive.lockSaturated &&
    now.temperature <= TOO_HOT
  );
}

/** What makes each event: a condition in words, the time it must last, and its measure. */
function conditions(unit: Unit, tabled: boolean): Condition[] {
  const { build } = unit;
  const list: Condition[] = [
    {
      name: "hiding place full",
      says: "what clings under the vehicle has reached its capacity",
      lasting: 0,
      // With what ran over in the step, so that the line crosses zero when it was full, not when the step ended.
      measure: ({ state, hiding, hidingStep }) =>
        hiding.capacity > 0 ? state.hidden + hidingStep.overflow - hiding.capacity * (1 - 1e-9) : -1,
    },
    {
      name: "first spot on the ground",
      says: "1 g has fallen while standing",
      lasting: 0,
      measure: ({ state }) => state.onGround - 0.001,
    },
    {
      name: "level below the low mark",
      says: "stick under its low mark, hot (75 to 90 degC), idling, standing level for 5 s",
      lasting: 5,
      // Where one loss is held against another, only the level may tell how near it came: what the moment allows would bend that line.
      measure: (walk) => {
        const under = build.sump.stick.low - walk.now.panDepth;
        const allows = checkable(walk);
        return tabled ? (allows > 0 ? under : -1) : Math.min(allows, under);
      },
    },
    {
      name: "pan overfull",
      says: "fluid over the top of the pan, where parts turn, engine running, for 30 s",
      // Longer than a start takes to fill what has drained into the pan overnight.
      lasting: 30,
      // Where one loss is held against another a unit is never overfull.
      measure: ({ state, now }) =>
        state.engine > 0 && !tabled ? overLid(build.sump.pan, now.panVolume) : -1,
    },
    {
      name: "learned trim at its limit",
      says: "the controller has learned all it may",
      lasting: 0,
      measure: ({ state }) => state.trim - 0.999 * build.shiftControl.trimLimit,
    },
    {
      name: "learned fill at its limit",
      says: "the controller fills a clutch as much earlier as it may",
      lasting: 0,
      measure: ({ mostFill }) => mostFill - 0.999 * build.shiftControl.fillLimit,
    },
    {
      name: "first gulp of air",
      says: "over 10 % gas at the pump for 0.3 s",
      lasting: 0.3,
      measure: ({ state }) => state.gas - GULP,
    },
    {
      name: "cooler flow below half",
      says: "feed to converter and cooler under half of full, fluid over 60 degC, for 3 s",
      lasting: 3,
      measure: ({ now }) => (now.temperature > HOT ? 0.5 - now.line.feed / now.line.feedFull : -1),
    },
    {
      name: "lock-up slipping",
      says: "over 100 rpm while told to hold, for 3 s",
      lasting: 3,
      measure: ({ now }) => (now.drive.lockSaturated ? now.drive.lockSlip - 100 * RPM : -1),
    },
    {
      name: "line pressure below demand",
      says: "under 97 % of the set point for 0.5 s",
      lasting: 0.5,
      measure: ({ now }) => (now.setPoint > 0 ? 0.97 - now.line.linePressure / now.setPoint : -1),
    },
    {
      name: "first sustained slip",
      says: "an element of the gear slips by over 50 rpm for 1 s, the first second of an engagement not counted",
      lasting: 1,
      measure: ({ slip, state }) => (state.slipping && !engaging(state) ? slip.speed - 50 * RPM : -1),
    },
    {
      name: "fluid too hot",
      says: "over 130 degC for 10 s",
      lasting: 10,
      measure: ({ now }) => now.temperature - TOO_HOT,
    },
    {
      name: "vehicle falls behind",
      says: "more than 3 m/s under the schedule for 5 s, with a slip on the way",
      lasting: 5,
      measure: ({ state, scheduled, heldUp }) => (heldUp ? scheduled - state.speed - 3 : -1),
    },
    {
      name: "no drive",
      says: "standing while 3 m/s or more are wanted, for 10 s, with a slip on the way",
      lasting: 10,
      measure: ({ state, scheduled, heldUp }) => (heldUp && scheduled > 3 ? 0.5 - state.speed : -1),
    },
  ];
  return list;
}

/** Marks of the damage index that are events of each clutch. */
const marks = [0.1, 0.5, 1] as const;

const damageWatcher = (mark: (typeof marks)[number], clutch: string): Watcher =>
  watcher(
    `damage ${mark}`,
    mark === 1 ? "no longer carries its rated torque at rated pressure" : `${mark * 100} % of the way there`,
    0,
    clutch,
  );

/** A clutch is being filled or is in its first second. */
const engaging = ({ entering, unfilled, shiftTime }: State): boolean =>
  entering >= 0 && (unfilled > 0 || shiftTime < ENGAGING);

/** What a kelvin, and a slope of one, count for beside a metre of level: only the sign of the least of them matters, and where it changes. */
const PER_KELVIN = 1e-3;
const PER_SLOPE = 1;

/** Above zero while the stick can be read: hot, standing, the surface at rest; how far it is from that otherwise, so that the moment can be found. */
function checkable({ state, now, road }: Walk): number {
  if (state.speed > 0 || state.running === 0 || state.engine === 0 || Math.abs(road.grade) >= 0.01) return -1;
  return Math.min(
    PER_KELVIN * (now.temperature - CHECK_FROM),
    PER_KELVIN * (CHECK_TO - now.temperature),
    PER_SLOPE * (0.01 - Math.abs(state.slosh[0]!)),
  );
}

/** Measures of a walk; `tabled` where they are held against those of the same trip at another loss, and not against their own past. */
export function newMeasures(walk: Walk, rated: Float64Array, tabled = false): Measures {
  const { unit } = walk;
  const list = conditions(unit, tabled);
  const watchers: Watcher[] = list.map(({ name, says, lasting, clutch }) =>
    watcher(name, says, lasting, clutch),
  );
  const shift = [
    watcher("first flare", "engine gains over 200 rpm before the clutch takes hold", 0),
    watcher("slow engagement, hot", `over ${SLOW_HOT} s into gear, fluid over 60 degC`, 0),
    watcher("slow engagement, cold", `over ${SLOW_COLD} s into gear, fluid from -10 to 30 degC`, 0),
  ];
  watchers.push(...shift);
  const firstDamage = watchers.length;
  for (let i = 0; i < rated.length; i++) {
    const { name } = unit.build.clutches[i] ?? unit.build.lockUp.clutch;
    watchers.push(...marks.map((mark) => damageWatcher(mark, name)));
  }
  const values = new Float64Array(watchers.length).fill(-1);
  const [flare, slowHot, slowCold] = [list.length, list.length + 1, list.length + 2];
  const hottest = walk.state.plate.slice();
  const lockUp = rated.length - 1;
  let calm = false;
  const damageOf = (i: number) => damageIndex(shareLeft(unit.build, walk.state, i), rated[i]!);
  const takeDamage = (i: number) => {
    const damage = damageOf(i);
    calm = false;
    for (let m = 0; m < marks.length; m++) values[firstDamage + i * marks.length + m] = damage - marks[m]!;
  };
  let counted = 0;

  return {
    watchers,
    values,
    hottest,
    level: null,
    watched: watchers.length,
    take(walk, engagement) {
      const { state, now, slip } = walk;
      // Once all have been seen not to hold, a calm unit needs no more looks at them.
      const wasCalm = calm;
      calm = isCalm(walk);
      const count = wasCalm && calm ? CALM_CONDITIONS : list.length;
      for (let i = 0; i < count; i++) if (!watchers[i]!.fired) values[i] = list[i]!.measure(walk);
      values[flare] = walk.flare - FLARE;
      walk.flare = 0;
      if (checkable(walk) > 0) this.level = now.panDepth;
      // Only what slips, has just engaged or is hot can have come nearer to its end in this step; the rest is looked at after each trip.
      if (slip.heat > 0) takeDamage(slip.clutch);
      if (now.drive.lockSaturated) takeDamage(lockUp);
      if (engagement.energy > 0 && engagement.time > 0) takeDamage(engagement.clutch);
      for (let i = 0; i < hottest.length; i++) {
        const plate = state.plate[i]!;
        if (plate > hottest[i]!) hottest[i] = plate;
        if (plate > CHARS) takeDamage(i);
      }
      this.watched = wasCalm && calm ? CALM_CONDITIONS : watchers.length;
    },
    engaged(walk, engagement) {
      const { temperature } = walk.now;
      calm = false;
      const taken = engagement.fill + engagement.time;
      values[slowHot] = temperature > HOT ? taken - SLOW_HOT : -1;
      values[slowCold] = temperature > FROSTY && temperature < COLD ? taken - SLOW_COLD : -1;
    },
    slipInTrip() {
      let sum = 0;
      for (let i = 0; i < lockUp; i++) sum += walk.slipEnergy[i]!;
      const inTrip = sum - counted;
      counted = sum;
      return inTrip;
    },
    worstDamage() {
      let worst = 0;
      for (let i = 0; i < rated.length; i++) takeDamage(i);
      for (let i = 0; i < rated.length; i++) worst = Math.max(worst, damageOf(i));
      return worst;
    },
  };
}
