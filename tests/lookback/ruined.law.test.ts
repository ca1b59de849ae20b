// What is ruined together: counted by hand on four guesses.
import { expect, test } from "vitest";
import type { Explanation } from "../../src/lookback/causes.ts";
import type { Posterior } from "../../src/lookback/posterior.ts";
import { ruinedIn, type RuinedAnswer } from "../../src/lookback/answer/ruined.ts";

const never = Infinity;
const columns = ["front", "rear", "lock-up"].flatMap((name) => [
  `when damage 0.5, ${name}`,
  `when damage 1, ${name}`,
]);
const build = { clutches: [{ name: "front" }, { name: "rear" }], lockUp: { clutch: { name: "lock-up" } } };

/** An explanation with its guesses, each a row of `columns`, all worth the same. */
const weighed = (explanation: Partial<Explanation>, share: number, rows: readonly number[][]) => ({
  explanation,
  share,
  logEvidence: 0,
  runs: [
    {
      answer: { count: rows.length, weights: rows.map(() => 1 / rows.length), logEvidence: 0 },
      foretold: Float64Array.from(rows.flat()),
    },
  ],
});
const posterior = (parts: readonly object[], walked: readonly object[] = []) =>
  ({ bench: { visit: { unit: { build } } }, columns, weighed: parts, walked }) as unknown as Posterior;
const slow = { cause: "slow leak", ails: false } as const;
const shareOf = (answer: readonly RuinedAnswer[], wanted: Omit<RuinedAnswer, "share">) =>
  answer
    .filter(
      ({ clutches, lockUp, burnt }) =>
        [clutches, lockUp, burnt].join() === [wanted.clutches, wanted.lockUp, wanted.burnt].join(),
    )
    .reduce((sum, { share }) => sum + share, 0);

const sound = [never, never, never, never, never, never];
const frontBurnt = [3, 4, never, never, never, never];
const rearHalf = [never, never, 5, never, never, never];
const lockUpHalf = [never, never, never, never, 6, never];

test("guesses that foretell harm are counted as it comes together", () => {
  const answer = ruinedIn(posterior([weighed(slow, 1, [sound, frontBurnt, rearHalf, lockUpHalf])]));
  for (const wanted of [
    { clutches: false, lockUp: false, burnt: false },
    { clutches: true, lockUp: false, burnt: true },
    { clutches: true, lockUp: false, burnt: false },
    { clutches: false, lockUp: true, burnt: false },
  ])
    expect(shareOf(answer, wanted)).toBeCloseTo(0.25, 12);
});

test("of a sudden loss and of a unit that ails otherwise two in five have burnt, whatever is foretold", () => {
  const answer = ruinedIn(
    posterior([
      weighed(slow, 0.5, [sound]),
      weighed({ cause: "line let go", ails: false }, 0.3, [sound, sound]),
      weighed({ cause: "worn pump or seals", ails: true }, 0.2, [sound]),
    ]),
  );
  expect(shareOf(answer, { clutches: true, lockUp: false, burnt: true })).toBeCloseTo(0.4 * 0.5, 12);
  expect(answer.reduce((sum, { share }) => sum + share, 0)).toBeCloseTo(1, 12);
});

test("a loss that was sudden more likely than not is told by those that were driven", () => {
  const fates = (...damages: number[]) => damages.map((damage) => ({ damage }));
  const answer = ruinedIn(
    posterior(
      [weighed({ cause: "line let go", ails: false }, 1, [sound])],
      [fates(1.2, 0, 0), fates(0, 0, 0.6), fates(0, 0, 0), fates(0.1, 0.2, 0)],
    ),
  );
  expect(shareOf(answer, { clutches: true, lockUp: false, burnt: true })).toBeCloseTo(0.25, 12);
  expect(shareOf(answer, { clutches: false, lockUp: true, burnt: false })).toBeCloseTo(0.25, 12);
  expect(shareOf(answer, { clutches: false, lockUp: false, burnt: false })).toBeCloseTo(0.5, 12);
});
