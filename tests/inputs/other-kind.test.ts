// A file of the other kind is told as that, in one fault.
import { expect, test } from "vitest";
import { readCase } from "../../src/inputs/case.ts";
import { caseData } from "../../src/inputs/files.ts";
import { readVisit } from "../../src/inputs/visit.ts";
import { caseFile } from "./shipped.ts";

const told = (run: () => unknown): string => {
  try {
    run();
  } catch (error) {
    return (error as Error).message;
  }
  return "";
};

test("a case read as a visit is told as a case, with who takes it, and nothing else is said", () => {
  const said = told(() => readVisit(caseData(caseFile("demo"))));
  expect(said).toBe(
    "visit: expected a visit (lastFull, visit, evidence); received a case: readCase and `npm run demo` take it",
  );
});

test("a visit read as a case is told as a visit", () => {
  const said = told(() => readCase({ name: "a", leak: {}, lastFull: {}, visit: {}, evidence: [] }));
  expect(said).toBe(
    "case: expected a case (start, opens, span, entries); received a visit: readVisit and `npm run lookback` take it",
  );
});

test("what has keys of both is asked for what it lacks", () => {
  expect(told(() => readVisit({ name: "a", span: "1 day", evidence: [] }))).toContain("lastFull: expected");
});
