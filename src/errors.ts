// The two ways in which input can be wrong: impossible (an error, with a code and every fault listed)
// and possible but outside a law's range (no error: the range stands beside the law and is reported).

/** The range in which a law was established. Leaving it is reported with the result, never an error. */
export interface Range {
  readonly law: string;
  readonly quantity: string;
  readonly unit: string;
  readonly low: number;
  readonly high: number;
  readonly source: string;
}

/** One thing that is wrong with the input, and how to put it right. */
export interface Fault {
  readonly path: string;
  /** Which item of a list the path leads into, in words, for whoever does not count from 0. */
  readonly item?: string;
  readonly expected: string;
  readonly given: string;
  readonly example: string;
}

export type ErrorCode = "impossible-input" | "bad-case" | "bad-trace" | "bad-unit";

/** An error that the caller can mend: a code to branch on, and all faults at once. */
export interface CodedError extends Error {
  readonly code: ErrorCode;
  readonly faults: readonly Fault[];
}

/** One line for a fault: where, what was expected, what came, and what to write instead. */
export function faultText(fault: Fault): string {
  const way = fault.example === "" ? "" : `, for example ${fault.example}`;
  const item = fault.item === undefined ? "" : ` (${fault.item})`;
  return `${fault.path}${item}: expected ${fault.expected}${way}; received ${fault.given}`;
}

/** A file that is wrong in one way on every line says enough in so many. */
const TOLD = 20;

/** A line for each fault, and what is left beyond the first twenty as a number. */
export function faultsText(faults: readonly Fault[]): string {
  const lines = faults.slice(0, TOLD).map(faultText);
  const left = faults.length - lines.length;
  return [...lines, ...(left > 0 ? [`and ${left} more, the last at ${faults.at(-1)!.path}`] : [])].join("\n");
}

export function codedError(code: ErrorCode, faults: readonly Fault[]): CodedError {
  const error = new Error(faultsText(faults));
  error.name = "SumpfallError";
  return Object.assign(error, { code, faults });
}

/** Refuses a number that no machine could have, such as a negative diameter or NaN. */
export function impossible(field: string, given: number, expected: string): never {
  throw codedError("impossible-input", [{ path: field, expected, given: String(given), example: "" }]);
}

// What a law asks of each of its numbers, a line each. A law that is asked thousands of times a second looks first, in one
// comparison or two, whether anything is wrong at all, and only then says by these what it is: calls would cost it a fifth.

const inUnits = (unit?: string): string => (unit ? ` ${unit}` : "");

/** Refuses what is no finite number. */
export function finite(field: string, given: number, unit?: string): void {
  if (!(Math.abs(given) < Infinity)) impossible(field, given, `a finite number${unit ? ` of ${unit}` : ""}`);
}

/** Refuses what is not above zero and finite. */
export function positive(field: string, given: number, unit?: string): void {
  if (!(given > 0 && given < Infinity)) impossible(field, given, `more than 0${inUnits(unit)}`);
}

/** Refuses what is below zero or not finite. */
export function notNegative(field: string, given: number, unit?: string): void {
  if (!(given >= 0 && given < Infinity)) impossible(field, given, `0${inUnits(unit)} or more`);
}

/** Refuses what is no share of a whole. */
export function fraction(field: string, given: number): void {
  if (!(given >= 0 && given <= 1)) impossible(field, given, "a share from 0 to 1");
}

export function isCoded(error: unknown): error is CodedError {
  return error instanceof Error && "code" in error && "faults" in error;
}
