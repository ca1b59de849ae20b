// What a schema takes at a path, in words: for whoever left a key out, wrote another, or gave something of another shape.

/** What is looked at in a schema; `options` are values of a word list, schemas of a choice. */
interface Shape {
  readonly type: string;
  readonly wrapped?: Shape;
  readonly entries?: Readonly<Record<string, Shape>>;
  readonly item?: Shape;
  readonly value?: Shape;
  readonly key?: string;
  readonly options?: readonly unknown[];
  readonly literal?: unknown;
}

/** One step of a path: the key, and what it was looked up in. */
interface Step {
  readonly key: unknown;
  readonly input: unknown;
}

/** The schema of what a path leads to; undefined where there is none. */
export function schemaAt(schema: unknown, path: readonly Step[]): Shape | undefined {
  let shape: Shape | undefined = schema as Shape;
  for (const { key, input } of path) {
    shape = chosen(shape, input);
    shape = shape?.entries === undefined ? (shape?.item ?? shape?.value) : shape.entries[String(key)];
  }
  return shape;
}

/** The same with every wrapping off, and of a choice the one that the input makes. */
export function chosen(shape: Shape | undefined, input: unknown): Shape | undefined {
  if (shape?.wrapped !== undefined) return chosen(shape.wrapped, input);
  if (shape?.type !== "variant") return shape;
  const word = typeof input === "object" && input !== null ? Reflect.get(input, shape.key!) : undefined;
  const options = (shape.options as readonly Shape[]).map((option) => chosen(option, input));
  return options.find((option) => {
    const entry = option?.entries?.[shape.key!];
    return entry?.type === "literal" ? entry.literal === word : entry?.options?.includes(word);
  });
}

/** Words for what a schema takes; undefined where the schema's own say it better. */
export function acceptedBy(shape: Shape | undefined): string | undefined {
  const bare = shape?.wrapped === undefined ? shape : chosen(shape, undefined);
  switch (bare?.type) {
    case "string":
      return "text that is not empty";
    case "boolean":
      return "true or false";
    case "array":
      return "a list";
    case "picklist":
      return `one of ${bare.options!.map((word) => JSON.stringify(word)).join(", ")}`;
    case "strict_object":
      return `an object with the keys ${Object.keys(bare.entries!).join(", ")}`;
    case "record":
    case "variant":
      return "an object";
    default:
      return undefined;
  }
}

/** The words that are known, those that are spelled most like the given one first. */
export function nearestFirst(known: readonly string[], word: string): readonly string[] {
  const off = new Map(known.map((one) => [one, edits(one.toLowerCase(), word.toLowerCase())]));
  return [...known].sort((a, b) => off.get(a)! - off.get(b)!);
}

/** The known word that is hardly spelled otherwise, if there is one: a third of its letters at most are off, and not all of them. */
export function nearest(known: readonly string[], word: string): string | undefined {
  const [first = ""] = nearestFirst(known, word);
  const off = edits(first.toLowerCase(), word.toLowerCase());
  return off > Math.max(1, first.length / 3) || off >= first.length ? undefined : first;
}

/** A question after a word that is none of the known ones, where one of them is hardly spelled otherwise. */
export function didYouMean(known: readonly string[], word: string): string {
  const near = nearest(known, word);
  return near === undefined ? "" : ` (did you mean ${near}?)`;
}

/** Letters to put in, take out or replace until one word is the other. */
function edits(a: string, b: string): number {
  let row = Array.from({ length: b.length + 1 }, (_, i) => i);
  for (let i = 1; i <= a.length; i++) {
    const above = row;
    row = [i];
    for (let j = 1; j <= b.length; j++)
      row.push(Math.min(above[j]! + 1, row[j - 1]! + 1, above[j - 1]! + (a[i - 1] === b[j - 1] ? 0 : 1)));
  }
  return row.at(-1)!;
}
