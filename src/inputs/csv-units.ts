// What the columns of a recorded drive may be called, and in which units they may stand.

export type Column = "time" | "speed" | "grade" | "lateral";
export const columnNames: readonly Column[] = ["time", "speed", "grade", "lateral"];

/** What one of each unit is in SI; spelled as `plainUnit` leaves them. A grade is rise over run, so it may stand without a unit. */
const units: Record<Column, Record<string, number>> = {
  time: { s: 1, sec: 1, secs: 1, second: 1, seconds: 1, ms: 1e-3, msec: 1e-3, min: 60, mins: 60, minutes: 60, h: 3600, hr: 3600, hours: 3600 }, // prettier-ignore
  speed: {
    ...{ "m/s": 1, mps: 1, ms: 1, "ms-1": 1, "m/sec": 1 },
    ...{ "km/h": 1 / 3.6, kmh: 1 / 3.6, kph: 1 / 3.6, "kmh-1": 1 / 3.6, "km/hr": 1 / 3.6, kmph: 1 / 3.6 },
    ...{ mph: 0.44704, "mi/h": 0.44704, "mi/hr": 0.44704, "miles/h": 0.44704, milesperhour: 0.44704 },
    ...{ "ft/s": 0.3048 },
  },
  grade: { "": 1, "-": 1, "1": 1, "m/m": 1, "%": 0.01, pct: 0.01, percent: 0.01 },
  lateral: { "m/s2": 1, ms2: 1, mps2: 1, "ms-2": 1, g: 9.80665 },
};

/** What is accepted, for the reader. */
export const unitsSaid: Record<Column, string> = {
  time: "s, ms, min, h",
  speed: "m/s, km/h, mph, ft/s",
  grade: "%, m/m",
  lateral: "m/s2, g",
};

const plainUnit = (unit: string): string =>
  unit
    .toLowerCase()
    .replaceAll("²", "2")
    .replaceAll("⁻¹", "-1")
    .replaceAll(/[\s.·*^]/g, "");

/** SI of one of a unit, undefined for an unknown one. */
export function factorOf(column: Column, unit: string): number | undefined {
  const plain = plainUnit(unit);
  return Object.hasOwn(units[column], plain) ? units[column][plain] : undefined;
}

const nouns: Record<Column, RegExp> = {
  time: /^(?:time|t)$/,
  speed: /^(?:speed|velocity|vel|v)$/,
  grade: /^(?:grade|gradient|slope)$/,
  lateral: /^(?:lateral|ay)$/,
};
// Words that may stand before the noun and change nothing of what it is.
const plainly =
  /^(?:total|elapsed|test|cycle|trip|running|vehicle|target|actual|measured|scheduled?|driving|drive|road)$/;
// With one of these it is another speed or time.
const another =
  /^(?:limit|wind|air|max|min|mean|average|avg|engine|motor|pump|turbine|shaft|wheel|reaction)$/;

/** A header cell read as a column: its name is the column's own, or only fits it ("cycSecs"); factor to SI, undefined: no unit or an unknown one. */
export interface ReadAs {
  readonly fit: "named" | "fits";
  readonly factor: number | undefined;
  /** A unit stands there, known or not. */
  readonly hasUnit: boolean;
}

/** What a header cell says when it is read as a column; undefined: it is another one. */
export function readAs(column: Column, cell: string): ReadAs | undefined {
  const { name, unit } = nameAndUnit(column, cell);
  const factor = unit === undefined ? undefined : factorOf(column, unit);
  const said = { factor, hasUnit: unit !== undefined };
  const words = wordsOf(name).map((word) => word.toLowerCase());
  if (column === "lateral" && words.length > 1 && /^acc(?:eleration)?$/.test(words.at(-1)!)) words.pop();
  const before = words.slice(0, -1);
  if (words.some((word) => another.test(word))) return undefined;
  if (words.length > 0 && nouns[column].test(words.at(-1)!)) {
    if (before.every((word) => plainly.test(word))) return { fit: "named", ...said };
    return before.length === 1 && (factor !== undefined || column === "grade")
      ? { fit: "fits", ...said }
      : undefined;
  }
  // "seconds", "mph", "cycSecs", "cycMps": the unit alone tells what it is, where it is a unit of one column only.
  const told = column === "time" || column === "speed" ? factor : undefined;
  if (told === undefined || plainUnit(unit!) === "ms" || /[[(]/.test(cell) || words.length > 1)
    return undefined;
  return columnNames.some((other) => words.length > 0 && nouns[other].test(words[0]!))
    ? undefined
    : { fit: words.length === 0 ? "named" : "fits", ...said };
}

/** Words parted by blanks, underscores or a capital. */
const wordsOf = (text: string): string[] =>
  text
    .replaceAll(/([a-z])([A-Z])/g, "$1 $2")
    .split(/[\s_]+/)
    .filter((word) => word !== "");

function nameAndUnit(column: Column, cell: string): { name: string; unit?: string } {
  const bracketed = /^(.*?)\s*[[(]\s*(.*?)\s*[\])]$/.exec(cell);
  if (bracketed !== null) return { name: bracketed[1]!, unit: bracketed[2]! };
  const parted = /^(.*?)(?:,|\s+in\s)\s*(.+)$/.exec(cell);
  if (parted !== null && factorOf(column, parted[2]!) !== undefined)
    return { name: parted[1]!, unit: parted[2]! };
  // The longest ending that is a unit: "speed km h-1", "time_s", "cycMps".
  const words = wordsOf(cell);
  for (let first = 0; first < words.length; first++) {
    const unit = words.slice(first).join(" ");
    if (factorOf(column, unit) !== undefined && !nouns[column].test(unit.toLowerCase()))
      return { name: words.slice(0, first).join(" "), unit };
  }
  return { name: cell };
}
