// Where a text stops being JSON and what would have to stand there, for whoever has to mend it: engines tell a place for some mistakes only, each in its own words.

/** A place in a text, lines and columns counted from 1, what stands there up to the line's end, and what JSON has there. */
export interface Place {
  readonly line: number;
  readonly column: number;
  readonly stands: string;
  readonly wants: string;
}

/** The first place at which a text breaks the grammar of JSON (RFC 8259), its end where it stops too early; null for JSON. */
export function jsonBreak(text: string): Place | null {
  let at = 0;
  let wants = "";
  /** What has to come next: told when it does not. */
  const want = (what: string): true => {
    wants = what;
    return true;
  };
  const eat = (pattern: RegExp): boolean => {
    pattern.lastIndex = at;
    const found = pattern.test(text);
    if (found) at = pattern.lastIndex;
    return found;
  };
  const space = () => eat(/[ \t\n\r]*/y);
  const string = () =>
    eat(/"(?:[^"\\\0-\x1f]|\\(?:["\\/bfnrt]|u[\da-fA-F]{4}))*/y) &&
    want(
      text[at] === "\\"
        ? "an escape such as \\n, or \\\\ for \\ itself"
        : 'the closing " of the text, in the same line',
    ) &&
    eat(/"/y);
  const items = (item: (first: boolean) => boolean, end: RegExp, closing: string): boolean => {
    if (space() && eat(end)) return true;
    for (let first = true; space() && item(first) && space(); first = false) {
      if (eat(end)) return true;
      want(`a comma or ${closing} after the value before`);
      if (!eat(/,/y)) return false;
    }
    return false;
  };
  const member = (first: boolean) =>
    want(
      first
        ? 'a name in double quotes ("), or }'
        : 'a name in double quotes (") after the comma, or no comma',
    ) &&
    string() &&
    space() &&
    want("a colon after the name") &&
    eat(/:/y) &&
    space() &&
    value();
  const value = (): boolean => {
    want('a value: text in double quotes ("), a number such as 0.5, true, false, null, [ or {');
    if (eat(/\{/y)) return items(member, /\}/y, "}");
    if (eat(/\[/y)) return items(value, /\]/y, "]");
    if (text[at] === '"') return string();
    return eat(/(?:-?(?:0|[1-9]\d*)(?:\.\d+)?(?:[eE][+-]?\d+)?|true|false|null)/y);
  };
  if (space() && value() && space() && want("nothing more after the value") && at === text.length)
    return null;
  const before = text.slice(0, at).split("\n");
  return {
    line: before.length,
    column: before.at(-1)!.length + 1,
    stands: /.*/.exec(text.slice(at))![0].trim(),
    wants,
  };
}
