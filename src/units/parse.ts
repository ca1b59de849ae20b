// Text with a unit becomes an SI number, or words for what is wrong with it.
// mathjs takes some input silently that no technician means ("", "3", "3 qt qt", 1e999): it is refused here first.

import type { Unit } from "mathjs";
import type { Fault } from "../errors.ts";
import { exampleOf, quantityKinds, type Kind, type QuantityKind } from "./kinds.ts";
import { parseUnit } from "./system.ts";

const numberThenUnit = /^([+-]?(?:\d+\.?\d*|\.\d+)(?:[eE][+-]?\d+)?)\s*(.*)$/s;
const energyWords = new Set([
  "J",
  "joule",
  "joules",
  "Wh",
  "BTU",
  "btu",
  "BTUs",
  "erg",
  "eV",
  "electronvolt",
  "cal",
]);

export type Parsed = { readonly value: number } | { readonly wrong: string };

/** SI value of text such as "65 psi" read as the given kind, or what is wrong with it. */
export function parseQuantity(kind: Kind, text: unknown): Parsed {
  const wanted: QuantityKind = quantityKinds[kind];
  if (typeof text === "number") return { wrong: `${text}, a number without a unit` };
  if (typeof text !== "string") return { wrong: given(text) };
  const quoted = `"${text}"`;
  const trimmed = text.trim();
  if (trimmed === "") return { wrong: "empty text" };
  const parts = numberThenUnit.exec(trimmed);
  if (!parts) return { wrong: `${quoted}, which does not begin with a plain number` };
  const number = Number(parts[1]);
  const unitText = spelled(parts[2] ?? "", wanted);
  if (unitText === "") return { wrong: `${quoted}, a number without a unit` };
  if (!Number.isFinite(number)) return { wrong: `${quoted}, which is too large a number` };

  let unit: Unit;
  try {
    unit = parseUnit(`${number} ${unitText}`);
  } catch (error) {
    return { wrong: `${quoted} (${error instanceof Error ? error.message : "not a unit"})` };
  }
  const wrong = wrongUnit(unit, unitText, wanted);
  if (wrong !== "") return { wrong: `${quoted}, ${wrong}` };
  const value =
    wanted.reading === undefined
      ? unit.toNumber(sameDimension(unit, wanted) ?? wanted.si)
      : kelvin(unit, number, wanted);
  if (!Number.isFinite(value)) return { wrong: `${quoted}, which is too large a number` };
  if (wanted.reading === "temperature" && value <= 0)
    return { wrong: `${quoted}, which is not above absolute zero` };
  return { value };
}

/** The fault of a text that is not a quantity of the kind, for the list that the reader is shown. */
export function quantityFault(path: string, kind: Kind, wrong: string): Fault {
  return {
    path,
    expected: `${quantityKinds[kind].expected} with its unit`,
    given: wrong,
    example: exampleOf(kind),
  };
}

/** Words for any value, short enough for one line. */
export function given(value: unknown): string {
  if (value === undefined) return "nothing";
  if (value === null) return "null";
  const text = JSON.stringify(value) ?? String(value);
  return text.length > 60 ? `${text.slice(0, 57)}...` : text;
}

// The trade's ways of writing a unit, in the letters that mathjs knows.
function spelled(unit: string, wanted: QuantityKind): string {
  let text = unit
    .replaceAll("²", "^2")
    .replaceAll("³", "^3")
    .replaceAll(/[·⋅]/g, " ")
    .replaceAll(/[µμ]/g, "u")
    .replaceAll(/°\s*([CF])/g, "deg$1")
    .replaceAll(/\bper\b/g, "/")
    .replaceAll(/\b(?:drop|drip)s?\b/g, "dripcount")
    .replaceAll(/([A-Za-z])-(?=[A-Za-z])/g, "$1 ")
    .replace(/^1?\s*\/\s*/, "/ ")
    .trim();
  if (wanted.reading === "difference") text = text.replace(/\s+(?:swing|difference)$/, "");
  // Among torques and energies, pounds and feet are pounds-force times feet.
  if (wanted.words !== undefined) text = text.replaceAll(/\blbs?\b/g, "lbf");
  return text;
}

function wrongUnit(unit: Unit, unitText: string, wanted: QuantityKind): string {
  const names: readonly string[] = unitText.match(/[A-Za-z]+/g) ?? [];
  const twice = names.find((name, i) => names.indexOf(name) !== i);
  if (twice !== undefined) return `in which the unit ${twice} stands twice`;
  if (sameDimension(unit, wanted) === undefined) return `which is not ${wanted.expected}`;
  const words = unit.units.map((part) => part.unit.name);
  const asEnergy =
    words.some((word) => energyWords.has(word)) || words.some((word) => word === "W" || word === "watt");
  if (wanted.words === "torque" && asEnergy) return "which is an energy, not a torque";
  if (wanted.words === "energy" && !asEnergy) return "which is a torque, not an energy";
  return "";
}

function sameDimension(unit: Unit, wanted: QuantityKind): string | undefined {
  return [wanted.si, ...(wanted.also ?? [])].find((si) => unit.equalBase(parseUnit(si)));
}

// A difference counts degrees; a temperature also counts where the scale begins.
function kelvin(unit: Unit, number: number, wanted: QuantityKind): number {
  if (wanted.reading === "temperature") return unit.toNumber("K");
  const fahrenheit = unit.units.some((part) => /^(?:degF|fahrenheit|degR|rankine)$/.test(part.unit.name));
  const celsius = unit.units.some((part) => /^(?:degC|celsius)$/.test(part.unit.name));
  return fahrenheit ? (number * 5) / 9 : celsius ? number : unit.toNumber("K");
}
