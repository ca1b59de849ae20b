// Who may import whom under src, types included. Arrows point one way.
import { existsSync, readdirSync, readFileSync } from "node:fs";
import { join, posix } from "node:path";
import ts from "typescript";
import { describe, expect, test } from "vitest";

const links = ["leak", "sump", "supply", "clutch", "heat", "damage", "load"].map((link) => `physics/${link}`);

// Room → the rooms it may import; a room always may import from itself. "physics" as a target covers all below it.
const mayImport: Record<string, string[]> = {
  errors: [],
  units: ["errors"],
  sources: [],
  "physics/fluid": ["errors"],
  // The links never import one another: the chain hands numbers from one to the next.
  ...Object.fromEntries(links.map((link) => [link, ["physics/fluid", "errors"]])),
  // The files directly in physics/: the chain, the build and the state.
  physics: ["physics/fluid", ...links, "errors"],
  driving: ["physics", "errors"],
  history: ["physics", "driving", "errors"],
  // The second fidelity walks with the first and marches with its functions; nothing below knows of it.
  duty: ["hands", "history", "physics", "driving", "errors"],
  // Chance: beliefs, random numbers and what a measurement says; it knows no transmission. Hands: who does the work.
  chance: ["errors"],
  hands: [],
  // What a technician sees is derived from a history, so pictures may read it, and physics may not.
  // Its card prints readings in shop units, and says who sets each band.
  bay: ["physics", "history", "units", "sources", "errors"],
  // The door: text with units comes in here and leaves as builds, drives, sightings and visits in SI.
  inputs: [
    "units",
    "sources",
    "physics",
    "driving",
    "history",
    "bay",
    "chance",
    "lookback",
    "decisions",
    "errors",
  ],
  lookback: ["bay", "chance", "driving", "duty", "hands", "history", "physics", "sources", "errors"],
  // What follows from what is known: laws of lives, looks and costs; the door reads prices for it.
  decisions: ["physics", "errors"],
  // A case run many times over what is uncertain in it. Text is never read here: that is the door's.
  ensemble: ["chance", "hands", "history", "bay", "inputs", "physics", "sources", "units", "errors"],
  // Pictures need units for their axes, and never the door.
  plots: ["history", "bay", "ensemble", "lookback", "physics", "errors", "units"],
};
// The public names, link by link.
mayImport["names"] = Object.keys(mayImport);
mayImport["index"] = Object.keys(mayImport);

type Files = Map<string, string>; // path below src, with forward slashes → text
type Arrow = { from: string; to: string };

// The longest row of the table that the path lies in, or undefined. A room that holds other rooms
// (physics) owns only the files directly in it, so a new folder there needs a row of its own.
function roomOf(path: string): string | undefined {
  const stem = path.replace(/\.[a-z]+$/, "");
  if (Object.hasOwn(mayImport, stem)) return stem;
  for (let room = posix.dirname(stem); room !== "."; room = posix.dirname(room)) {
    if (!Object.hasOwn(mayImport, room)) continue;
    const holdsRooms = Object.keys(mayImport).some((other) => other.startsWith(`${room}/`));
    return holdsRooms && room !== posix.dirname(stem) ? undefined : room;
  }
  return undefined;
}

// What a file imports by a relative path: import, export-from, import(…) as value and as type.
function arrowsOf(path: string, text: string): Arrow[] {
  const found: Arrow[] = [];
  const note = (specifier: ts.Node | undefined) => {
    if (specifier && ts.isStringLiteralLike(specifier) && specifier.text.startsWith("."))
      found.push({ from: path, to: posix.join(posix.dirname(path), specifier.text) });
  };
  const visit = (node: ts.Node): void => {
    if (ts.isImportDeclaration(node) || ts.isExportDeclaration(node)) note(node.moduleSpecifier);
    else if (ts.isImportTypeNode(node) && ts.isLiteralTypeNode(node.argument)) note(node.argument.literal);
    else if (ts.isCallExpression(node) && node.expression.kind === ts.SyntaxKind.ImportKeyword)
      note(node.arguments[0]);
    ts.forEachChild(node, visit);
  };
  visit(ts.createSourceFile(path, text, ts.ScriptTarget.Latest));
  return found;
}

const allArrows = (files: Files) => [...files].flatMap(([path, text]) => arrowsOf(path, text));

const unknownFiles = (files: Files) => [...files.keys()].filter((path) => roomOf(path) === undefined);

function forbiddenArrows(files: Files): string[] {
  return allArrows(files)
    .filter(({ from, to }) => {
      const [importer, imported] = [roomOf(from), roomOf(to)];
      if (importer === undefined || imported === undefined) return true;
      const allowed = [importer, ...mayImport[importer]];
      // The physics room itself gets only what its row says; for others "physics" means everything in it.
      return !allowed.some(
        (room) => room === imported || (room !== importer && imported.startsWith(`${room}/`)),
      );
    })
    .map(({ from, to }) => `${from} → ${to}`);
}

// Each cycle found once, as "a → b → a".
function cycles(files: Files): string[] {
  const done = new Set<string>();
  const trail: string[] = [];
  const found: string[] = [];
  const walk = (path: string): void => {
    const start = trail.indexOf(path);
    if (start >= 0) found.push([...trail.slice(start), path].join(" → "));
    if (start >= 0 || done.has(path)) return;
    trail.push(path);
    for (const { to } of arrowsOf(path, files.get(path) ?? "")) walk(to);
    trail.pop();
    done.add(path);
  };
  for (const path of files.keys()) walk(path);
  return found;
}

function readSource(): Files {
  const root = join(import.meta.dirname, "../src");
  if (!existsSync(root)) return new Map();
  return new Map(
    readdirSync(root, { recursive: true, encoding: "utf8" })
      .filter((name) => name.endsWith(".ts"))
      .map((name) => [name.replaceAll("\\", "/"), readFileSync(join(root, name), "utf8")]),
  );
}

describe("the source tree", () => {
  const source = readSource();

  test("holds only files whose folder is in the table", () => expect(unknownFiles(source)).toEqual([]));
  test("has no import that the table does not allow", () => expect(forbiddenArrows(source)).toEqual([]));
  test("has no cycle between files", () => expect(cycles(source)).toEqual([]));
});

describe("the check itself notices", () => {
  const tree = (files: Record<string, string>): Files => new Map(Object.entries(files));
  const forbidden = (path: string, text: string) => forbiddenArrows(tree({ [path]: text }));

  test("an unknown folder, below physics too", () => {
    const files = tree({
      "utils.ts": "",
      "misc/a.ts": "",
      "physics/gears/a.ts": "",
      "physics/leak/seep/a.ts": "",
    });
    expect(unknownFiles(files)).toEqual(["utils.ts", "misc/a.ts", "physics/gears/a.ts"]);
  });

  test.each([
    ["a plain import", `import { a } from "../sump/a.ts";`],
    ["a type import", `import type { A } from "../sump/a.ts";`],
    ["an export from", `export * from "../sump/a.ts";`],
    ["a side effect", `import "../sump/a.ts";`],
    ["a type inside an expression", `let a: import("../sump/a.ts").A;`],
    ["a late import", `const a = () => import("../sump/a.ts");`],
  ])("a link that reaches for another link by %s", (_, text) => {
    expect(forbidden("physics/leak/a.ts", text)).toEqual(["physics/leak/a.ts → physics/sump/a.ts"]);
  });

  test("a link that reads the chain, a law that reads the door, a file outside src", () => {
    expect(forbidden("physics/leak/a.ts", `import "../state.ts";`)).toHaveLength(1);
    expect(forbidden("physics/chain.ts", `import "../inputs/a.ts";`)).toHaveLength(1);
    expect(forbidden("physics/chain.ts", `import "../../demos/a.ts";`)).toHaveLength(1);
    expect(forbidden("errors.ts", `import "./units/a.ts";`)).toHaveLength(1);
  });

  test("nothing wrong in what the table allows, in comments and in packages", () => {
    expect(
      forbidden("physics/leak/a.ts", `import "./b.ts"; import "../fluid/a.ts"; import "../../errors.ts";`),
    ).toEqual([]);
    expect(forbidden("physics/chain.ts", `import "./state.ts"; import "./leak/a.ts"; import "d3";`)).toEqual(
      [],
    );
    expect(forbidden("history/a.ts", `import "../physics/chain.ts"; import "../physics/sump/a.ts";`)).toEqual(
      [],
    );
    expect(
      forbidden("index.ts", `export * from "./errors.ts"; export * from "./physics/heat/a.ts";`),
    ).toEqual([]);
    expect(forbidden("units/a.ts", `// import "../physics/chain.ts"`)).toEqual([]);
  });

  test("a cycle between files of one folder", () => {
    const files = tree({
      "units/a.ts": `import "./b.ts";`,
      "units/b.ts": `import type { C } from "./c.ts";`,
      "units/c.ts": `import "./a.ts";`,
      "units/d.ts": `import "./a.ts";`,
    });
    expect(cycles(files)).toEqual(["units/a.ts → units/b.ts → units/c.ts → units/a.ts"]);
  });
});
