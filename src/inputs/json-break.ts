// Where a text stops being JSON, for whoever has to mend it: engines tell a place for some mistakes only.

/** A place in a text, lines and columns counted from 1, and what stands there. */
export interface Place {
  readonly line: number;
  readonly column: number;
  readonly stands: string;
}

/** The first place at which a text breaks the grammar of JSON (RFC 8259), its end where it stops too early; null for JSON. */
export function jsonBreak(text: string): Place | null {
  let at = 0;
  const eat = (pattern: RegExp): boolean => {
    pattern.lastIndex = at;
    const found = pattern.test(text);
    if (found) at = pattern.lastIndex;
    return found;
  };
  const space = () => eat(/[ \t\n\r]*/y);
  const string = () => eat(/"(?:[^"\\\0-\x1f]|\\(?:["\\/bfnrt]|u[\da-fA-F]{4}))*/y) && eat(/"/y);
  const items = (item: () => boolean, end: RegExp): boolean => {
    if (space() && eat(end)) return true;
    while (space() && item() && space()) {
      if (eat(end)) return true;
      if (!eat(/,/y)) return false;
    }
    return false;
  };
  const member = () => string() && space() && eat(/:/y) && space() && value();
  const value = (): boolean => {
    if (eat(/\{/y)) return items(member, /\}/y);
    if (eat(/\[/y)) return items(value, /\]/y);
    if (text[at] === '"') return string();
    return eat(/(?:-?(?:0|[1-9]\d*)(?:\.\d+)?(?:[eE][+-]?\d+)?|true|false|null)/y);
  };
  if (space() && value() && space() && at === text.length) return null;
  const before = text.slice(0, at).split("\n");
  return {
    line: before.length,
    column: before.at(-1)!.length + 1,
    stands: /.*/.exec(text.slice(at))![0].trim(),
  };
}
