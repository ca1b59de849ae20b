// Text with a unit becomes an SI number, or words for what is wrong with it.
// mathjs takes some input silently that no technician means ("", "3", "3 qt qt", 1e999): it is refused here first.

import type { Unit } from "mathjs";
import type { Fault } from "../errors.ts";
import { exampleOf, quantityKinds, type Kind, type QuantityKind } from "./kinds.ts";
import { parseUnit } from "./system.ts";

/** Thousands parted by commas, before a unit that is only used where commas do that: "5,000 mi". Before another a comma may be a decimal point. */
const thousands =
  /^([+-]?[1-9]\d{0,2}(?:,\d{3})+)(?=(?:\.\d*)?\s*(?:mi|miles?|mph|qts?|quarts?|gal|gallons?|floz|fl oz|oz|psig?|lbs?|lbf|ft|feet|foot|in|inch|inches|(?:°|deg)\s*F|hp|BTU)\b)/;
/** A fraction as a rule and a jug are read, before a unit: "1/2 qt", "1 1/2 qt", "2-1/2 qt". */
const fraction = /^([+-]?)\s*(?:(\d+)(?:\s+|-))?(\d+)\s*\/\s*([1-9]\d*)(?=\s*(?:[A-Za-z°]|$))/;
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
  const said = given(text);
  const trimmed = text.trim();
  if (trimmed === "") return { wrong: "empty text" };
  const plain = trimmed
    .replaceAll("\u2212", "-")
    .replaceAll(/[¼-¾⅐-⅞]/g, (one) => ` ${one.normalize("NFKC").replace("\u2044", "/")}`)
    .trimStart()
    .replace(thousands, (number: string) => number.replaceAll(",", ""))
    .replace(fraction, decimal);
  const parts = numberThenUnit.exec(plain);
  if (!parts) return { wrong: `${said}, which does not begin with a plain number` };
  if (/^,\d/.test(parts[2] ?? ""))
    return {
      wrong: `${said}, in which a comma is read only between thousands of miles, quarts and the like: decimals need a point`,
    };
  const number = Number(parts[1]);
  const unitText = spelled(parts[2] ?? "", wanted);
  if (unitText === "") return { wrong: `${said}, a number without a unit` };
  if (!Number.isFinite(number)) return { wrong: `${said}, which is too large a number` };

  let unit: Unit;
  try {
    unit = parseUnit(`1 ${unitText}`);
  } catch (error) {
    // What mathjs was given began with a 1 of ours: only the text as it was written is told.
    const why = error instanceof Error ? error.message.replace(/ in "1 .*$/s, "") : "not a unit";
    return { wrong: `${said} (${why})` };
  }
  const wrong = wrongUnit(unit, unitText, wanted);
  if (wrong !== "") return { wrong: `${said}, ${wrong}` };
  const value =
    wanted.reading === "temperature"
      ? parseUnit(`${number} ${unitText}`).toNumber("K")
      : wanted.reading === "difference"
        ? number * degree(unit)
        : inSI(number, unit.toNumber(sameDimension(unit, wanted) ?? wanted.si));
  if (!Number.isFinite(value)) return { wrong: `${said}, which is too large a number` };
  if (wanted.reading === "temperature" && value <= 0)
    return { wrong: `${said}, which is not above absolute zero` };
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
  const text = typeof value === "string" || typeof value === "object" ? quoted(value) : String(value);
  return text.length > 60 ? `${text.slice(0, 57)}...` : text;
}

function quoted(value: unknown): string {
  try {
    return JSON.stringify(value) ?? "nothing";
  } catch {
    return "an object that is no plain data";
  }
}

function decimal(told: string, sign: string, whole: string | undefined, over: string, under: string): string {
  // Beside a whole number stands less than one: anything else is a slip of the pen, and is refused as it was written.
  if (whole !== undefined && Number(over) >= Number(under)) return told;
  return `${sign}${Number(whole ?? 0) + Number(over) / Number(under)}`;
}

// The trade's ways of writing a unit, in the letters that mathjs knows.
function spelled(unit: string, wanted: QuantityKind): string {
  let text = unit
    .replaceAll("²", "^2")
    .replaceAll("³", "^3")
    .replaceAll(/[·⋅]/g, " ")
    .replaceAll(/[µμ]/g, "u")
    .replaceAll(/([A-Za-z])([234])\b/g, "$1^$2")
    .replaceAll(/°\s*([CF])/g, "deg$1")
    .replaceAll(/\bper\b/g, "/")
    .replaceAll(/\bfl\.?\s+oz\b/g, "floz")
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

// Fifteen digits of the factor, and a division where that is exact, so that 20 cm3 is 2e-5 m3 and no number beside it.
function inSI(number: number, factor: number): number {
  const parts = Number((1 / factor).toPrecision(15));
  return factor < 1 && Number.isInteger(parts) ? number / parts : number * Number(factor.toPrecision(15));
}

// A difference counts degrees [K] and does not ask where the scale begins.
function degree(unit: Unit): number {
  const names = unit.units.map((part) => part.unit.name);
  if (names.some((name) => /^(?:degF|fahrenheit|degR|rankine)$/.test(name))) return 5 / 9;
  return names.some((name) => /^(?:degC|celsius)$/.test(name)) ? 1 : unit.toNumber("K");
}
