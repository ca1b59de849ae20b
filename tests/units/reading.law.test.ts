import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { isCoded } from "../../src/errors.ts";
import { quantityKinds, type Kind } from "../../src/units/kinds.ts";
import { parseQuantity } from "../../src/units/parse.ts";
import * as read from "../../src/units/read.ts";

const kinds = Object.keys(quantityKinds) as Kind[];
const value = (kind: Kind, text: unknown): number => {
  const parsed = parseQuantity(kind, text);
  if ("wrong" in parsed) throw new Error(parsed.wrong);
  return parsed.value;
};
const wrong = (kind: Kind, text: unknown): string => {
  const parsed = parseQuantity(kind, text);
  return "wrong" in parsed ? parsed.wrong : "";
};

describe("text with a unit becomes SI", () => {
  it.each<[Kind, string, number]>([
    ["pressure", "65 psi", 448159.224],
    ["pressure", "65 psig", 448159.224],
    ["pressure", "1,000 psig", 6894757.293],
    ["speed", "60 kmh", 60 / 3.6],
    ["torque", "250 Nm", 250],
    ["pressure", "1 bar", 1e5],
    ["pressure", "450kPa", 450e3],
    ["volume", "1 qt", 9.46352946e-4],
    ["volume", "3 quarts", 2.839058838e-3],
    ["displacement", "20 cm3", 2e-5],
    ["displacement", "20 cm3/rev", 2e-5],
    ["length", "0.8 mm", 0.0008],
    ["length", "13 mm", 0.013],
    ["length", "5 µm", 5e-6],
    ["length", "-3 mm", -0.003],
    ["length", "0.125 in", 0.003175],
    ["temperature", "185 degF", 358.15],
    ["temperature", "85 °C", 358.15],
    ["temperature", "−29 degC", 244.15],
    ["temperature", "300 K", 300],
    ["temperatureDifference", "9 K", 9],
    ["temperatureDifference", "9 degC swing", 9],
    ["temperatureDifference", "9 degF", 5],
    ["angularSpeed", "60 rpm", 2 * Math.PI],
    ["angularSpeed", "1 rev/s", 2 * Math.PI],
    ["speed", "60 mph", 26.8224],
    ["speed", "36 km/h", 10],
    ["kinematicViscosity", "35 cSt", 3.5e-5],
    ["kinematicViscosity", "35 mm²/s", 3.5e-5],
    ["dynamicViscosity", "7.3 mPa s", 7.3e-3],
    ["dripRate", "40 drops/min", 40],
    ["dripRate", "1 drop per second", 60],
    ["dripRate", "90 drips/h", 1.5],
    ["torque", "620 N m", 620],
    ["torque", "620 N*m", 620],
    ["torque", "100 lb ft", 135.5817948331],
    ["torque", "100 ft-lb", 135.5817948331],
    ["energy", "12 kJ", 12e3],
    ["energy", "1 kWh", 3.6e6],
    ["power", "150 kW", 150e3],
    ["flow", "6 L/min", 1e-4],
    ["rate", "0.5 1/h", 0.5 / 3600],
    ["laminarResistance", "8e8 1/m3", 8e8],
    ["pressurePerTorque", "1.5 kPa/(N m)", 1500],
    ["torquePerSpeed", "0.03 N m s", 0.03],
    ["conductancePerSpeed", "0.6 W/K/(m/s)", 0.6],
    ["wearPerEnergy", "2e-5 mm3/J", 2e-14],
    ["acceleration", "0.2 gn", 1.96133],
    ["distance", "60000 mi", 96560640],
    ["time", "150 h", 540e3],
  ])("%s %s", (kind, text, expected) => {
    expect(Math.abs(value(kind, text) / expected - 1)).toBeLessThan(1e-9);
  });

  it.each<[string, number]>([
    ["1/2 qt", 0.5],
    ["½ qt", 0.5],
    ["1 1/2 qt", 1.5],
    ["1½ qt", 1.5],
    ["2-1/2 qt", 2.5],
    ["48 fl oz", 1.5],
    ["-1/2 qt", -0.5],
    ["-½ qt", -0.5],
    ["-1 3/8 quarts", -1.375],
    ["3/2 qt", 1.5],
  ])("a fraction as a jug is read: %s is %f qt", (text, quarts) => {
    expect(value("volume", text)).toBe(value("volume", `${quarts} qt`));
  });

  it("a fraction that is none is refused, and a range is not read as one", () => {
    expect(wrong("volume", "1/2")).toMatch(/a number without a unit/);
    for (const text of ["1/0 qt", "1 3/2 qt", "1.5 1/2 qt", "2 - 1/2 qt", "1 2 qt"])
      expect(wrong("volume", text), text).toContain(text);
    expect(value("rate", "1 1/h")).toBe(1 / 3600);
  });

  it.each(kinds)("the example that a message shows for %s is accepted", (kind) => {
    expect(value(kind, quantityKinds[kind].example)).toBeGreaterThan(0);
  });

  it("thousands parted by commas before a unit of the trade in US: as without them", () => {
    const units: readonly (readonly [Kind, string])[] = [
      ["distance", "mi"],
      ["distance", "miles"],
      ["volume", "qt"],
      ["pressure", "psi"],
      ["torque", "lb ft"],
      ["temperature", "°F"],
      ["mass", "lb"],
    ];
    fc.assert(
      fc.property(fc.constantFrom(...units), fc.integer({ min: 1000, max: 1e9 }), ([kind, unit], x) => {
        const parted = x.toLocaleString("en-US");
        expect(value(kind, `${parted} ${unit}`)).toBe(value(kind, `${x} ${unit}`));
        expect(value(kind, `${parted}.5 ${unit}`)).toBe(value(kind, `${x}.5 ${unit}`));
      }),
    );
    expect(value("distance", "5,000 miles")).toBe(value("distance", "5000 miles"));
  });

  it.each<[Kind, string]>([
    ["volume", "3,500 L"],
    ["volume", "3,5 L"],
    ["distance", "62,00 mi"],
    ["distance", "0,500 mi"],
    ["distance", "6200,000 mi"],
    ["distance", "100,000 km"],
  ])("%s %s, whose comma may be a decimal one, is refused in the reader's own text", (kind, text) => {
    const said = wrong(kind, text);
    expect(said).toContain(`"${text}"`);
    expect(said).toContain("comma");
    expect(said).not.toContain("Unexpected");
  });

  it("is linear in the number, differences through zero", () => {
    fc.assert(
      fc.property(fc.constantFrom(...kinds), fc.double({ min: -1e6, max: 1e6, noNaN: true }), (kind, x) => {
        if (kind === "temperature") return;
        const unit = quantityKinds[kind].example.replace(/^\S+ /, "");
        const one = value(kind, `1 ${unit}`);
        expect(Math.abs(value(kind, `${x} ${unit}`) - x * one)).toBeLessThanOrEqual(
          1e-14 * Math.abs(x * one),
        );
      }),
    );
  });

  it("gives back an SI number written with its SI unit", () => {
    fc.assert(
      fc.property(fc.double({ min: 1e-12, max: 1e12, noNaN: true }), (x) => {
        expect(value("pressure", `${x} Pa`)).toBe(x);
        expect(value("length", `${x} m`)).toBe(x);
        expect(value("torque", `${x} N m`)).toBe(x);
      }),
    );
  });
});

describe("what mathjs would take silently is refused", () => {
  it.each<[Kind, unknown, RegExp]>([
    ["pressure", "", /empty/],
    ["pressure", "   ", /empty/],
    ["pressure", 65, /number without a unit/],
    ["pressure", "65", /number without a unit/],
    ["volume", "3 qt qt", /qt stands twice/],
    ["length", "3 m m", /m stands twice/],
    ["volume", "3 m m m", /stands twice/],
    ["volume", "1e999 qt", /too large/],
    ["length", "1e308 km", /too large/],
    ["volume", "Infinity qt", /plain number/],
    ["volume", "NaN qt", /plain number/],
    ["volume", Number.NaN, /without a unit/],
    ["volume", "3,5 qt", /comma/],
    ["volume", "3 quarx", /quarx/],
    ["volume", "3 psi", /not a volume/],
    ["energy", "250 Nm", /a torque, not an energy/],
    ["volume", "3 QT", /not a volume/],
    ["volume", "20 drops", /not a volume/],
    ["flow", "20 drops/min", /not a flow/],
    ["dripRate", "2 mL/min", /not drops/],
    ["torque", "250 J", /energy, not a torque/],
    ["torque", "3 W h", /energy, not a torque/],
    ["energy", "250 N m", /torque, not an energy/],
    ["energy", "100 ft lb", /torque, not an energy/],
    ["angularSpeed", "10 1/s", /not a speed of rotation/],
    ["angularSpeed", "10 Hz", /not a speed of rotation/],
    ["temperature", "-300 degC", /absolute zero/],
    ["temperature", "0 K", /absolute zero/],
    ["temperature", "20", /without a unit/],
    ["temperature", "20 degC/s", /not a temperature/],
    ["pressure", null, /null/],
    ["pressure", undefined, /nothing/],
    ["pressure", ["65 psi"], /\[/],
  ])("%s %j", (kind, text, message) => {
    expect(wrong(kind, text)).toMatch(message);
  });

  it("never NaN, infinity or a throw, whatever the text", () => {
    fc.assert(
      fc.property(
        fc.constantFrom(...kinds),
        fc.string({ maxLength: 12 }),
        fc.string({ maxLength: 6 }),
        (kind, a, b) => {
          for (const text of [a, `3 ${a}`, `${a} ${b}`, `1e3 ${quantityKinds[kind].example}`]) {
            const parsed = parseQuantity(kind, text);
            if ("value" in parsed) expect(Number.isFinite(parsed.value)).toBe(true);
          }
        },
      ),
    );
  });
});

describe("the functions of the door", () => {
  it("names the field and an example when a bare number comes", () => {
    const bare = 65 as unknown as string;
    expect(() => read.pascals("line.target", bare)).toThrow(
      'line.target: expected a pressure with its unit, for example "65 psi"; received 65, a number without a unit',
    );
  });

  it("collects every fault", () => {
    const faultsOf = (run: () => unknown) => {
      try {
        run();
      } catch (error) {
        if (isCoded(error)) return error.faults.map(({ path }) => path);
      }
      return [];
    };
    const readings = {
      pressure: () => read.pascals("pressure", "65"),
      fill: () => read.cubicMetres("fill", "11 L"),
      torque: () => read.newtonMetres("torque", "3 J"),
    };
    expect(faultsOf(() => read.readAll(readings))).toEqual(["pressure", "torque"]);
    expect(read.readAll({ fill: readings.fill })).toEqual({ fill: 0.011 });
  });

  it.each<[keyof typeof read, string, number]>([
    ["metres", "1 ft", 0.3048],
    ["metresDriven", "1 mi", 1609.344],
    ["squareMetres", "110 cm2", 0.011],
    ["cubicMetresPerSecond", "60 L/min", 1e-3],
    ["dropsPerMinute", "40 drops/min", 40],
    ["kilograms", "2900 kg", 2900],
    ["kilogramsPerCubicMetre", "0.86 g/cm3", 860],
    ["kelvins", "0 degC", 273.15],
    ["temperatureDifference", "18 degF", 10],
    ["seconds", "2 days", 172800],
    ["perSecond", "2 1/s", 2],
    ["metresPerSecond", "1 mph", 0.44704],
    ["metresPerSecondSquared", "0.3 m/s2", 0.3],
    ["radiansPerSecond", "30 rpm", Math.PI],
    ["radians", "180 deg", Math.PI],
    ["squareMetresPerSecond", "7.3 cSt", 7.3e-6],
    ["pascalSeconds", "1 Pa s", 1],
    ["newtons", "900 N", 900],
    ["watts", "1 kW", 1000],
    ["joules", "1 kJ", 1000],
  ])("%s reads %s", (name, text, expected) => {
    expect((read[name] as read.Reading)("field", text)).toBeCloseTo(expected, 10);
  });
});
