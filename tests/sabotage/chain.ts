// Faults between the links: in what the chain hands on, and in how a history carries it through time.
import { change, fiveOff, type Mutation, type Place } from "./mutation.ts";

const place = (link: string, file: string, ...tests: string[]): Place => ({
  link,
  file,
  tests: tests.map((test) => `tests/${test}`),
});

const power = place("several links", "physics/chain.ts", "history/power");
const level = place("several links", "physics/chain.ts", "emerge/first-symptoms");
const away = place("sump", "physics/sump/holdup.ts", "emerge/first-symptoms");
const leak = place("several links", "physics/chain.ts", "history/parked");
const parked = place("leak path", "history/parked.ts", "history/parked");
const driveline = place("load", "physics/drivetrain.ts", "history/power", "emerge/slip-heat");
const growing = place("growth", "physics/leaking.ts", "history/parked");
const advance = place("several links", "history/advance.ts", "emerge/first-symptoms");
const settle = place("heat", "history/settle.ts", "history/closure");
const slip = place("clutch", "history/slip.ts", "history/power");
const shift = place("clutch", "history/shift.ts", "history/shift");
const filling = place("clutch", "history/entering.ts", "history/shift");
const pressing = place("clutch", "history/entering.ts", "history/short-slip");
const lining = place("damage", "history/slip.ts", "history/lasting-slip");
const steps = place("clutch", "history/slide.ts", "history/short-slip");
const slide = place("load", "history/slide.ts", "history/shift");
const symptoms = place("several links", "history/measures.ts", "history/dated");
const margin = place("damage", "history/margin.ts", "history/margin");
const order = place("clutch", "history/slip.ts", "history/order");
const implicit = place("clutch", "history/ros2.ts", "history/ros2");
const near = place("several links", "history/covered.ts", "emerge/steps");
const path = place("several links", "history/covered.ts", "history/near-air");
const mouth = place("pickup and air", "history/mouth.ts", "history/mouth");
const ended = place("several links", "history/watch.ts", "history/mouth");
const slow = place("several links", "history/advance.ts", "history/slow-steps");
const full = place("hiding places", "history/measures.ts", "emerge/shipped-steps");
const seam = place("leak path", "history/near-air.ts", "history/slow-steps");
const drained = place("sump", "history/parked.ts", "history/slow-steps");
const kinks = place("load", "driving/ticks.ts", "emerge/steps");

export const chainMutations: readonly Mutation[] = [
  change(
    mouth,
    "a path outlives its step",
    "if (path.samples === 0 || path.began !== walk.state.clock) return false;",
    "if (path.samples === 0) return false;",
  ),
  change(
    order,
    "friction at the end of a step by the vehicle's speed then",
    "state.speed + h * drive.acceleration)",
    "state.speed + 0.5 * h * drive.acceleration)",
  ),
  change(
    pressing,
    "a clutch presses once it is full",
    "return Math.max(AT_ONCE, state.unfilled / flow);",
    "return Math.max(Infinity, state.unfilled / flow);",
  ),
  change(lining, "a lining as charred as halfway", "0.5 * seconds * slip.charring", "0 * slip.charring"),
  change(steps, "a slip that bends is looked at closely again", "const FIRST = 1 / 16;", "const FIRST = 4;"),
  change(steps, "steps of a slip by what bends in it", "const BENT = 6;", "const BENT = 600;"),
  change(implicit, "the second stage", "rate[0]! - 2 * k1", "rate[0]! - 1.9 * k1"),
  change(implicit, "the weights of the stages", "1.5 * k1 + 0.5 * k2", "1.4 * k1 + 0.4 * k2"),
  change(implicit, "stable however stiff", "const GAMMA = 1 - Math.SQRT1_2", "const GAMMA = 0.1"),
  change(
    near,
    "a gulp between two looks is looked for",
    "return isCovered(pickup, LESS * (Math.min(lowest, pan.height) - pickup.height), MORE * walk.mostDrawn);",
    "return isCovered(pickup, lowest - pickup.height + 0.02, walk.mostDrawn);",
  ),
  change(path, "the surface's path between two looks at it", "return 0.125 * turns", "return 0.1 * turns"),
  change(path, "where the covered part of a path ends", "Math.max(0, seconds - part)", "seconds + part"),
  change(mouth, "what is drawn goes evenly in a sample", "to - (to - from) * draw.lags", "to"),
  change(
    mouth,
    "the level goes on as it went",
    "(now.submergence - over[samples / 2]!) / (0.5 * seconds)",
    "0",
  ),
  change(ended, "a condition ends within a step", "(last / (last - measure))", "0"),
  change(
    full,
    "a hiding place is full within a step",
    "state.hidden + hidingStep.overflow - hiding",
    "state.hidden - hiding",
  ),
  change(slow, "fluid as warm as halfway", "0.5 * walk.gained", "0 * walk.gained"),
  change(slow, "coolant as warm as halfway", "0.5 * walk.coolantGained", "0 * walk.coolantGained"),
  change(slow, "a leak as wide as halfway", "state.leakAge += ahead", "state.leakAge += 0 * ahead"),
  change(
    seam,
    "a surface that swings over the rail is followed",
    "return swings > STILL &&",
    "return swings > 1 &&",
  ),
  change(
    drained,
    "what drains back is taken halfway",
    "drains(walk, 0.5 * seconds); // as",
    "drains(walk, seconds); // as",
  ),
  change(
    kinks,
    "kinks of the driving are stepped on",
    "const span = end - time[i];",
    "const span = Math.round(end) - Math.round(time[i]);",
  ),
  ...fiveOff(
    power,
    "pump heat",
    "now.pumpHeat = pumpTorque(build.pump, line.linePressure)",
    (k) => `now.pumpHeat = ${k} * pumpTorque(build.pump, line.linePressure)`,
  ),
  ...fiveOff(power, "gear heat", "now.gearHeat = power * (1 -", (k) => `now.gearHeat = ${k} * power * (1 -`),
  change(
    power,
    "what the turbine takes heats the converter",
    "drive.impellerTorque * drive.engine - throughConverter",
    "drive.impellerTorque * drive.engine + throughConverter",
  ),
  change(
    power,
    "the strongest element gives way",
    "if (held < now.holds)",
    "if (!(held < now.holds) || held === now.holds)",
  ),
  change(away, "what is in flight is in the pan", "passages + inFlight;", "passages - inFlight;"),
  change(level, "the pickup hangs under the floor", "x, y) - height;", "x, y) + height;"),
  change(
    leak,
    "the cooler path is as warm as the sump",
    "0.5 * (now.temperature + state.coolant)",
    "0.5 * (now.temperature + now.temperature)",
  ),
  change(
    leak,
    "a hole in the pan leaks what is below it",
    "over - now.leak.height",
    "over + now.leak.height",
  ),
  change(
    driveline,
    "the gears' losses drive the wheels",
    "(wheelForce * arm) / build.gearEfficiency",
    "wheelForce * arm * build.gearEfficiency",
  ),
  change(growing, "pressure closes the crack", "crackGap(hoop + bending", "crackGap(-hoop + bending"),
  change(
    parked,
    "the line keeps what it has lost",
    "state.lines -= Math.min(inLine, lost);",
    "state.lines += Math.min(inLine, lost);",
  ),
  ...fiveOff(
    parked,
    "loss while parked",
    "Math.min(parkedLoss(walk, seconds, rests) *",
    (k) => `Math.min(${k} * parkedLoss(walk, seconds, rests) *`,
  ),
  change(advance, "launches throw the fluid forward", "tiltAlong(acceleration,", "tiltAlong(-acceleration,"),
  ...fiveOff(
    settle,
    "the steel's share of slip heat",
    "const power = (made * toSteel) / seconds;",
    (k) => `const power = (${k} * made * toSteel) / seconds;`,
  ),
  ...fiveOff(slip, "slip heat", "heat += held * mean * step;", (k) => `heat += ${k} * held * mean * step;`),
  change(
    slip,
    "the clutch pushes the turbine on",
    "(driven - carried) / build",
    "(driven + carried) / build",
  ),
  ...fiveOff(filling, "filling of a late clutch", "- flow * seconds;", (k) => `- ${k} * flow * seconds;`),
  change(
    shift,
    "drained passages fill by themselves",
    "fillVolume(clutch) + drained;",
    "fillVolume(clutch) - drained;",
  ),
  change(slide, "the driver lets go when behind", "driver.pressOn * lag", "-driver.pressOn * lag"),
  change(
    shift,
    "torques hinder a downshift",
    "turbine >= synchronous ? 1 : -1",
    "turbine >= synchronous ? 1 : 1",
  ),
  change(symptoms, "a weak engine is a weak clutch", "(heldUp ? scheduled", "(!heldUp ? scheduled"),
  ...fiveOff(margin, "rated margin", "const margin = capacity(", (k) => `const margin = ${k} * capacity(`),
];
