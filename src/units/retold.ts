// Sentences that hold SI amounts, such as the conditions of events and of the bay's tests, told in the reader's units.

import { axis, type ShownKind, type UnitSystem } from "./show.ts";

/** A unit as our sentences write it, and what it is of: its SI value is factor × number + offset. */
interface Written {
  readonly unit: string;
  readonly kind: ShownKind;
  readonly factor: number;
  readonly offset?: number;
}

const written: readonly Written[] = [
  { unit: "degC", kind: "temperature", factor: 1, offset: 273.15 },
  { unit: "°C", kind: "temperature", factor: 1, offset: 273.15 },
  { unit: "m/s", kind: "speed", factor: 1 },
  { unit: "km/h", kind: "speed", factor: 1 / 3.6 },
  { unit: "MPa", kind: "pressure", factor: 1e6 },
  { unit: "kPa", kind: "pressure", factor: 1e3 },
  { unit: "mm", kind: "length", factor: 1e-3 },
  { unit: "L", kind: "volume", factor: 1e-3 },
];

const number = "-?\\d+(?:\\.\\d+)?";
const amounts = new RegExp(
  `(${number})(?: to (${number}))? (${written.map(({ unit }) => unit).join("|")})(?![\\w/²³])`,
  "g",
);

/** As many figures as were written, two at least: 3 m/s is 6.7 mph and no closer. Temperatures are told by the degree. */
const figuresOf = (text: string): number => Math.max(2, text.replace(/^-|\./g, "").replace(/^0+/, "").length);

/**
 * The sentence with every SI amount in it ("75 to 90 degC", "3 m/s", "0.95 L") in the reader's units. Speeds of rotation,
 * times, shares and counts are the same everywhere and stay.
 */
export function retold(sentence: string, system: UnitSystem): string {
  return sentence.replace(amounts, (_, from: string, to: string | undefined, unit: string) => {
    const { kind, factor, offset = 0 } = written.find((one) => one.unit === unit)!;
    const shown = axis(kind, system);
    const told = (text: string) => {
      const value = (Number(text) * factor + offset) * shown.factor + shown.offset;
      return kind === "temperature"
        ? String(Math.round(value))
        : String(Number(value.toPrecision(figuresOf(text))));
    };
    return `${told(from)}${to === undefined ? "" : ` to ${told(to)}`} ${shown.unit}`;
  });
}
