// What a look back says first and what it says of volumes that cannot be, on answers made up for it.
import { expect, test } from "vitest";
import { causeSentences, reservations, type Telling } from "../../demos/look-back/told.ts";
import { tooMuch } from "../../demos/look-back/too-much.ts";
import { alone } from "../../demos/report/said.ts";
import { readVisitFile } from "../../src/inputs/files.ts";
import { litres, quarts } from "../../src/units/literals.ts";

const read = readVisitFile("reference-data/visits/three-facts.json");
const shares = (told: Readonly<Record<string, number>>) =>
  ({
    answer: {
      causes: Object.entries(told).map(([cause, share]) => ({ cause, share })),
      parting: { apart: true },
    },
  }) as unknown as Telling;

test.each<[string, Readonly<Record<string, number>>]>([
  ["Yes. A slow leak", { "slow leak": 0.7, "line let go": 0.2, "never filled": 0.1 }],
  ["No. A fill that was low from the start", { "never filled": 0.9, "slow leak": 0.1 }],
  ["Cannot be told. A slow leak", { "slow leak": 0.6, "worn pump or seals": 0.4 }],
])("was it the leak opens with yes, no or cannot be told: %s", (says, told) => {
  expect(causeSentences(shares(told))[0]).toMatch(new RegExp(`^Was it the leak\\? ${says}: `));
});

test("without evidence it is said that the vehicle still drove into the bay", () => {
  const bare = { read: { ...read, visit: { ...read.visit, evidence: [] } }, answer: { conflicts: [] } };
  expect(reservations(bare as unknown as Telling).join()).toContain("and that it still drove into the bay");
});

const answer = (gulp: number, most: number) =>
  ({
    missing: { now: { nineTenths: [0, most] } },
    events: [{ name: "first gulp of air", chance: gulp }],
  }) as unknown as Telling["answer"];
const seen = (item: object) => ({
  visit: {
    ...read.visit,
    evidence: [{ name: "evidence[0]", at: read.visit.at, error: quarts(0.1), ...item }],
  },
});

test("a volume above what a pump that draws air leaves is answered with why", () => {
  const missing = seen({ kind: "fluid missing", volume: quarts(5.5) }) as never;
  expect(tooMuch(missing, answer(0.99, quarts(5.2)), alone("US"))).toEqual([
    expect.stringMatching(
      /^5\.5 qt were told missing, the answer goes up to 5\.2 qt: .*not pumped out/,
    ) as string,
  ]);
  expect(tooMuch(missing, answer(0.99, quarts(5.45)), alone("US"))).toEqual([]);
  expect(tooMuch(missing, answer(0.1, quarts(5.2)), alone("US"))).toEqual([]);
});

test("more drained than a full unit lets go through the plug is said to be that", () => {
  const full = read.visit.unit.build.fill - litres(4.6);
  const drained = (volume: number) => seen({ kind: "fluid drained", volume, stays: litres(4.6) }) as never;
  expect(tooMuch(drained(full + litres(0.5)), answer(0, 0), alone("SI"))[0]).toContain("through the plug");
  expect(tooMuch(drained(full), answer(0, 0), alone("SI"))).toEqual([]);
});
