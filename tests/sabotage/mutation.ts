// One deliberate fault: a text in a source file, found exactly once, replaced by another.

export interface Mutation {
  /** The link that it hurts, or the balance from which it takes. */
  readonly link: string;
  readonly what: string;
  /** Below src. */
  readonly file: string;
  readonly find: string;
  readonly put: string;
  /** Filters of test files that ought to notice: parts of their paths. */
  readonly tests: readonly string[];
}

/** Where a link's mutations are made and looked for. */
export interface Place {
  readonly link: string;
  readonly file: string;
  readonly tests: readonly string[];
}

/** The same place with its law 5 % too large and 5 % too small. */
export function fiveOff(
  place: Place,
  law: string,
  find: string,
  put: (factor: string) => string,
): Mutation[] {
  return ["1.05", "0.95"].map((factor) => ({ ...place, what: `${law} × ${factor}`, find, put: put(factor) }));
}

/** A single change at a place. */
export function change(place: Place, what: string, find: string, put: string): Mutation {
  return { ...place, what, find, put };
}

/** The mutated text. Throws when the text to find is not there exactly once: the law has moved, and its mutation must follow. */
export function mutated(mutation: Mutation, source: string): string {
  const { find, put, file, what } = mutation;
  const parts = source.split(find);
  if (parts.length !== 2)
    throw new Error(`${what}: in src/${file} this text stands ${parts.length - 1} times, not once:\n${find}`);
  return parts.join(put);
}
