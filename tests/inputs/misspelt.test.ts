// A key that is misspelt is one mistake, and is told as one: where it stands, what was given, what is known there, and what was meant.
import { describe, expect, it } from "vitest";
import { faultText } from "../../src/errors.ts";
import { readCase } from "../../src/inputs/case.ts";
import { caseData } from "../../src/inputs/files.ts";
import { readVisit } from "../../src/inputs/visit.ts";
import { caseFile, changed, faultsOf, faultsWith } from "./shipped.ts";
import { plainVisit, van, visitFile } from "./visits.ts";

const visitFaults = (visit: unknown) => faultsOf(() => readVisit(visit, van));
type Path = readonly (string | number)[];

/** Every path to a key whose letters can be spoilt: not those of a number's origin, nor names that a file gives itself. */
function keysIn(data: unknown, path: Path = []): Path[] {
  if (Array.isArray(data)) return data.flatMap((item, i) => keysIn(item, [...path, i]));
  if (typeof data !== "object" || data === null || "value" in data) return [];
  const free = path.at(-1) === "beliefs" || path.at(-1) === "causes";
  return Object.entries(data).flatMap(([key, value]) => [
    ...(free || key.length < 3 ? [] : [[...path, key]]),
    ...keysIn(value, [...path, key]),
  ]);
}

/** The data with one letter of a key left out. */
function spoilt(data: unknown, path: Path, to: string): unknown {
  const [key, ...rest] = path;
  if (Array.isArray(data))
    return data.map((item, i) => (i === key ? spoilt(item, rest, to) : (item as unknown)));
  return Object.fromEntries(
    Object.entries(data as object).map(([name, value]: [string, unknown]) =>
      name !== key ? [name, value] : rest.length === 0 ? [to, value] : [name, spoilt(value, rest, to)],
    ),
  );
}

describe("a misspelt key", () => {
  const visit = (data: unknown) => readVisit(data, van);
  it.each<[string, unknown, (data: unknown) => unknown]>([
    ["a case of the van", changed(), readCase],
    ["a case of the taxi", caseData(caseFile("taxi-shaft-seal")), readCase],
    ...["three-facts", "fitting-let-go", "low-from-the-start", "seep-behind-a-shield"].map(
      (name): [string, unknown, (data: unknown) => unknown] => [name, caseData(visitFile(name)), visit],
    ),
  ])("anywhere in %s is one fault, with the key or the part that it stands in", (name, data, read) => {
    // One build's keys are enough: each is read as often as there are keys.
    const paths = keysIn(data).filter(
      ([first, second]) =>
        first !== "about" && (name.endsWith("van") || first !== "build" || second === undefined),
    );
    expect(paths.length).toBeGreaterThan(5);
    for (const path of paths) {
      const key = String(path.at(-1));
      const to = key.slice(0, -2) + key.slice(-1);
      const faults = faultsOf(() => read(spoilt(data, path, to)));
      const said = faults.map(faultText).join("\n");
      expect(faults.length, said).toBe(1);
      expect(said).toContain(to);
    }
  });

  it("says what is not known and what was meant, in a case", () => {
    expect(faultsWith(["fillShrt", "0.5 qt"]).map(faultText)).toEqual([
      expect.stringMatching(
        /^fillShrt: expected one of the keys fillShort, .*; received "fillShrt", which is not known: did you mean "fillShort"\?$/,
      ),
    ]);
  });

  it("says what is not known and what was meant, in a visit", () => {
    const given = { ...plainVisit, visit: { date: "2024-10-14", odometr: "62000 mi" } };
    expect(visitFaults(given).map(faultText)).toEqual([
      'visit.odometr: expected one of the keys odometer, date; received "odometr", which is not known: did you mean "odometer"?',
    ]);
  });

  it("of the word that tells an item's kind is told with the kinds that there are", () => {
    const given = { ...plainVisit, evidence: [{ kid: "drops", count: 4, time: "1 min", engine: "off" }] };
    expect(visitFaults(given)).toMatchObject([
      {
        path: "evidence[0].kid",
        expected: expect.stringMatching(/^the key kind, one of .*"drops"/) as string,
        given: '"kid", which is not known: did you mean "kind"?',
      },
    ]);
  });

  it("two in one object are two faults", () => {
    expect(faultsWith(["fillShrt", "0.5 qt"], ["sed", 4]).map(({ path }) => path)).toEqual([
      "fillShrt",
      "sed",
    ]);
  });

  it("beside the right one hides nothing that is missing elsewhere", () => {
    const paths = faultsWith(["build.pump.displacemet", "21 cm3/rev"], ["build.pump.slip", undefined]).map(
      ({ path }) => path,
    );
    expect(paths.sort()).toEqual(["build.pump.displacemet", "build.pump.slip"]);
  });
});

it("a size of the pan that is missing is told where it belongs", () => {
  expect(faultsWith(["build.sump.pan.length", undefined])).toMatchObject([
    { path: "build.sump.pan.length", given: "nothing" },
  ]);
});
