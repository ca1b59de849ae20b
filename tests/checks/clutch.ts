// The clutch link against worked problems that others have printed.
import { frictionTorque, lockPressure } from "../../src/physics/clutch/capacity.ts";
import { centrifugalForce, centrifugalPressure } from "../../src/physics/clutch/centrifugal.ts";
import { openPackDrag } from "../../src/physics/clutch/drag.ts";
import {
  commonSpeed,
  engagementEnergy,
  engagementTime,
  type TwoInertias,
} from "../../src/physics/clutch/engagement.ts";
import { fadeEnergy } from "../../src/physics/clutch/fade.ts";
import { frictionFromTest, stribeckFriction } from "../../src/physics/clutch/friction.ts";
import {
  evenPressure,
  faceArea,
  meanRadiusPressure,
  meanRadiusWear,
  slidingSpeed,
  wearForce,
  wearPressure,
} from "../../src/physics/clutch/geometry.ts";
import { nextFill } from "../../src/physics/clutch/learned-fill.ts";
import { type Lockup, lockupPressureFor } from "../../src/physics/clutch/lockup.ts";
import { peakSlip } from "../../src/physics/clutch/slip.ts";
import type { Check } from "./check.ts";
import { pack } from "./generic-pack.ts";

const rpm = Math.PI / 30;
const ring = (outerDiameter: number, innerDiameter: number) => ({
  outer: outerDiameter / 2,
  inner: innerDiameter / 2,
});

const bhandari = (place: string) => `Bhandari, Design of Machine Elements, ${place}`;
const homework = "machine-design course homework with solution, clutch of 300 by 225 mm";
const ownReference = "closed form, evaluated separately in Python 3";

const plate = ring(0.2, 0.1);
const car = ring(0.25, 0.175);
const multi = ring(0.15, 0.075);
const coursePlate = ring(0.3, 0.225);
const shigley = ring(0.25, 0.175);

const lockup: Lockup = {
  ...pack,
  name: "generic converter clutch",
  faces: 1,
  outer: 0.125,
  inner: 0.105,
  pistonArea: Math.PI * (0.125 ** 2 - 0.03 ** 2),
  spring: 0,
  most: 8e5,
  back: 0,
  fedFromOverflow: true,
};

const shaftPair: TwoInertias = {
  driveTorque: 0,
  loadTorque: 0,
  driveInertia: 20 * 0.075 ** 2,
  loadInertia: 35 * 0.125 ** 2,
  slip: 2000 * rpm,
};
const tenKilowatts = 10000 / (2000 * rpm);
const motorAndRotor: TwoInertias = {
  driveTorque: 0,
  loadTorque: 0,
  driveInertia: 800 * 0.26 ** 2,
  loadInertia: 1350 * 0.225 ** 2,
  slip: (1250 - 600) * rpm,
};
const coupledWheels: TwoInertias = {
  driveTorque: 0,
  loadTorque: 0,
  driveInertia: 0.218,
  loadInertia: 0.01,
  slip: 10,
};
const freeWheels: TwoInertias = {
  driveTorque: 0,
  loadTorque: 0,
  driveInertia: 1,
  loadInertia: 2,
  slip: 800 * rpm,
};
const flywheels: TwoInertias = {
  driveTorque: 0,
  loadTorque: 0,
  driveInertia: 0.02,
  loadInertia: 0.04,
  slip: 150,
};
const shift: TwoInertias = {
  driveTorque: 200,
  loadTorque: 50,
  driveInertia: 0.15,
  loadInertia: 1.5,
  slip: 200,
};
const line = { torqueAtRest: 400, freeSpeed: 600 };

export const checks: readonly Check[] = [
  {
    claim: "force on a new plate of 200 by 100 mm at 1 MPa",
    link: "clutch",
    source: bhandari("example 11.2"),
    kind: "published",
    expected: 23561.944902,
    got: () => 1e6 * faceArea(plate),
    tolerance: { relative: 1e-9 },
  },
  {
    claim: "torque of that plate by even pressure, friction 0.2",
    link: "clutch",
    source: bhandari("example 11.2"),
    kind: "published",
    expected: 366.519142919,
    got: () => frictionTorque(1e6 * faceArea(plate), 0.2, { faces: 1, radius: meanRadiusPressure(plate) }),
    tolerance: { relative: 1e-9 },
  },
  {
    claim: "margin over 250 N m of a car clutch with nine springs of 800 N, new",
    link: "clutch",
    source: bhandari("example 11.6, step 1"),
    kind: "published",
    expected: 2.164235,
    got: () => frictionTorque(7200, 0.35, { faces: 2, radius: meanRadiusPressure(car) }) / 250,
    tolerance: { relative: 5e-7 },
  },
  {
    claim: "margin of the same clutch worn in",
    link: "clutch",
    source: bhandari("example 11.6, step 2"),
    kind: "published",
    expected: 2.142,
    got: () => frictionTorque(7200, 0.35, { faces: 2, radius: meanRadiusWear(car) }) / 250,
    tolerance: { relative: 5e-7 },
  },
  {
    claim: "clamp force of a multi-disk clutch that has 0.3 MPa at its inner edge",
    link: "clutch",
    source: bhandari("example 11.8"),
    kind: "published",
    expected: 2650.719,
    got: () => wearForce(multi, 0.3e6),
    tolerance: { relative: 1e-6 },
  },
  {
    claim: "power of its five steel and four bronze disks at 750 rpm",
    link: "clutch",
    source: bhandari("example 11.8"),
    kind: "published",
    expected: 9368.414,
    got: () =>
      frictionTorque(wearForce(multi, 0.3e6), 0.1, { faces: 8, radius: meanRadiusWear(multi) }) * 750 * rpm,
    tolerance: { relative: 1e-6 },
  },
  {
    claim: "time to bring a shaft to 2000 rpm through a 10 kW clutch",
    link: "clutch",
    source: bhandari("example 11.14"),
    kind: "published",
    expected: 0.409285,
    got: () => engagementTime(tenKilowatts, shaftPair) ?? NaN,
    tolerance: { relative: 2e-6 },
  },
  {
    claim: "heat of that engagement",
    link: "clutch",
    source: bhandari("example 11.14"),
    kind: "published",
    expected: 2046.422713,
    got: () => engagementEnergy(tenKilowatts, shaftPair) ?? NaN,
    tolerance: { relative: 1e-8 },
  },
  {
    claim: "pressure at the inner edge under 5 kN, worn in",
    link: "clutch",
    source: homework,
    kind: "published",
    expected: 188628,
    got: () => wearPressure(coursePlate, 5000),
    tolerance: { relative: 1e-5 },
  },
  {
    claim: "torque of one worn-in pair under 5 kN, friction 0.25",
    link: "clutch",
    source: homework,
    kind: "published",
    expected: 164.063,
    got: () => frictionTorque(5000, 0.25, { faces: 1, radius: meanRadiusWear(coursePlate) }),
    tolerance: { relative: 1e-5 },
  },
  {
    claim: "even pressure under 5 kN on the same plate, new",
    link: "clutch",
    source: homework,
    kind: "published",
    expected: 161681,
    got: () => evenPressure(coursePlate, 5000),
    tolerance: { relative: 1e-5 },
  },
  {
    claim: "axial force new over axial force worn for one torque, 250 by 50 mm",
    link: "clutch",
    source: "engineering entrance examination question on a disc clutch, with answer",
    kind: "published",
    expected: 0.871,
    got: () => meanRadiusWear(ring(0.25, 0.05)) / meanRadiusPressure(ring(0.25, 0.05)),
    tolerance: { absolute: 5e-4 },
  },
  {
    claim: "common speed of a motor armature at 1250 and a rotor at 600 rpm after the clutch is let in",
    link: "clutch",
    source: "homework-help page, motor and rotor joined by a single-plate clutch, with solution",
    kind: "published",
    expected: 92.9004,
    got: () => commonSpeed(12.9, motorAndRotor, 600 * rpm) ?? NaN,
    tolerance: { relative: 5e-6 },
    because: "the page labels both speeds wrongly but prints and uses 130.8997 and 62.8319 rad/s",
  },
  {
    claim: "kinetic energy lost in that engagement",
    link: "clutch",
    source: "homework-help page, motor and rotor joined by a single-plate clutch, with solution",
    kind: "published",
    expected: 69947.66,
    got: () => engagementEnergy(12.9, motorAndRotor) ?? NaN,
    tolerance: { relative: 2e-4 },
    because: "printed as the difference of two energies, of which the larger is off in its fifth digit",
  },
  {
    claim: "share of the energy lost when a spinning wheel is coupled to one of twice its inertia",
    link: "clutch",
    source: "homework-help page on a rotating wheel coupled to a second one, with answer",
    kind: "published",
    expected: 0.667,
    got: () =>
      (engagementEnergy(1, freeWheels) ?? NaN) / (0.5 * freeWheels.driveInertia * freeWheels.slip ** 2),
    tolerance: { absolute: 5e-4 },
  },
  {
    claim: "energy lost when a flywheel of 10.9 kg drives a second wheel of 2 kg by friction",
    link: "clutch",
    source: "homework-help page on two flywheels, with answer",
    kind: "published",
    expected: 0.481,
    got: () => engagementEnergy(1, coupledWheels) ?? NaN,
    tolerance: { relative: 0.01 },
    because:
      "printed from the difference of 10.9 and 10.419 J after the common speed was rounded to 9.56 rad/s",
  },
  {
    claim: "rise of the surface at the wall of a vessel of 0.6 m turning at 6 rad/s, in metres of liquid",
    link: "clutch",
    source: "civil-engineering board examination review, rotating vessels",
    kind: "published",
    expected: 0.66,
    got: () => centrifugalPressure({ inner: 0, outer: 0.6, free: 0 }, 1000, 6) / (1000 * 9.81),
    tolerance: { absolute: 1e-3 },
    because: "printed as 0.660; the page's own fraction gives 0.6606",
  },
  {
    claim: "rise at the wall of a vessel of 0.75 m at 3.73 rad/s, in metres of liquid",
    link: "clutch",
    source: "civil-engineering board examination review, rotating vessels",
    kind: "published",
    expected: 0.4,
    got: () => centrifugalPressure({ inner: 0, outer: 0.75, free: 0 }, 1000, 3.73) / (1000 * 9.81),
    tolerance: { relative: 3e-3 },
    because: "the speed is printed to three digits and enters squared",
  },
  {
    claim: "sliding speed of a friction test at 3600 rpm on a mean radius of 67.5 mm",
    link: "clutch",
    source: `test speed of SAE J2487; ${ownReference}`,
    kind: "computed",
    expected: 25.4469,
    got: () => slidingSpeed({ outer: 0.075, inner: 0.06 }, 3600 * rpm),
    tolerance: { relative: 1e-5 },
  },
  {
    claim: "torque of one worn-in pair of 250 by 175 mm under 4 kN, friction 0.30",
    link: "clutch",
    source: "Shigley, Mechanical Engineering Design, ch. 16, problem on a single-plate clutch",
    kind: "recalled",
    expected: 127.5,
    got: () => frictionTorque(4000, 0.3, { faces: 1, radius: meanRadiusWear(shigley) }),
    tolerance: { relative: 1e-9 },
  },
  {
    claim: "heat of two flywheels at 50 and 200 rad/s pressed together",
    link: "clutch",
    source: "Young and Freedman, University Physics, example on a flywheel and a clutch plate",
    kind: "recalled",
    expected: 150,
    got: () => engagementEnergy(10, flywheels) ?? NaN,
    tolerance: { relative: 1e-9 },
  },
  {
    claim: "its lock pressure for 300 N m",
    link: "clutch",
    source: ownReference,
    kind: "computed",
    expected: 434416.2,
    got: () => lockPressure(pack, 300, 0.12),
    tolerance: { relative: 1e-6 },
  },
  {
    claim: "centrifugal force of fluid with its free surface inside the piston's inner edge",
    link: "clutch",
    source: `${ownReference}, confirmed by quadrature`,
    kind: "computed",
    expected: 1788.069,
    got: () => centrifugalForce({ inner: 0.04, outer: 0.08, free: 0.03 }, 850, 300),
    tolerance: { relative: 1e-6 },
  },
  {
    claim: "drag of the open pack at 200 rad/s, film of 0.2 mm",
    link: "clutch",
    source: ownReference,
    kind: "computed",
    expected: 5.86869,
    got: () => openPackDrag({ ...pack, stroke: 2e-3 }, 0.02, 200),
    tolerance: { relative: 1e-5 },
  },
  {
    claim: "friction coefficient from a rig's torque",
    link: "clutch",
    source: `definition in SAE J286; ${ownReference}`,
    kind: "computed",
    expected: 0.1234568,
    got: () => frictionFromTest(250, 3000, { faces: 10, radius: 0.0675 }),
    tolerance: { relative: 1e-6 },
  },
  {
    claim: "Stribeck friction of a spent fluid at 0.05 m/s",
    link: "clutch",
    source: ownReference,
    kind: "computed",
    expected: 0.143389,
    got: () =>
      stribeckFriction({ coulomb: 0.12, atRest: 0.15, speed: 0.2, exponent: 1, viscous: 5e-4 }, 0.05),
    tolerance: { absolute: 1e-5 },
  },
  {
    claim: "heat of that shift at 250 N m",
    link: "clutch",
    source: `${ownReference}, confirmed by an ODE run`,
    kind: "computed",
    expected: 10714.286,
    got: () => engagementEnergy(250, shift) ?? NaN,
    tolerance: { relative: 1e-6 },
  },
  {
    claim: "worst slip heat on a falling engine line",
    link: "clutch",
    source: `${ownReference}, confirmed by a bounded search`,
    kind: "computed",
    expected: 33750,
    got: () => peakSlip(line, 150).power,
    tolerance: { relative: 1e-9 },
  },
  {
    claim: "heat of a pressure that fades from 800 kPa in 100 s",
    link: "clutch",
    source: `${ownReference}, confirmed by quadrature`,
    kind: "computed",
    expected: 1687500,
    got: () =>
      fadeEnergy(
        { ...line, outputSpeed: 150, inertia: 0 },
        { kiss: 0, perPressure: 5e-4 },
        { startPressure: 8e5, duration: 100 },
      ),
    tolerance: { relative: 1e-9 },
  },
  {
    claim: "pressure difference that holds 200 N m on it",
    link: "clutch",
    source: ownReference,
    kind: "computed",
    expected: 312501.8,
    got: () => lockupPressureFor(lockup, 200, 0.12),
    tolerance: { relative: 1e-5 },
  },
  {
    claim:
      "a fill that is 0.1 s late, a fifth of it learned each time, is made up for by 89 ms after ten shifts",
    link: "clutch",
    source: `${ownReference}: 0.1 (1 - 0.8^10)`,
    kind: "computed",
    expected: 0.08926258176,
    got: () =>
      Array.from({ length: 10 }).reduce<number>((known) => nextFill(known, 0.1 - known, 0.2, 0.15), 0),
    tolerance: { relative: 1e-9 },
  },
];
