// What has to be said beside a table, so that none of its rows is taken for a mistake.

import type { EventName } from "../../src/history/watch.ts";
import { outOfTwenty } from "../../src/lookback/answer/words.ts";
import { wordsFor } from "../../src/plots/event-words.ts";
import type { Telling } from "./told.ts";

type Answered = Pick<Telling, "answer">;

/** From this share on it is told that an event came before the opening. */
const SOME = 0.025;

/** Events that lie before the opening, and those whose order in a sudden loss is not the usual one. */
export function eventNotes({ answer: { events, causes } }: Answered): string[] {
  const early = events.filter(({ chance, early: share }) => chance >= 0.01 && share >= SOME);
  const moment = (name: string) =>
    events.find((event) => event.name === name && event.clutch === undefined)?.when?.middle;
  const [stands, slips] = [moment("no drive"), moment("first sustained slip")];
  const sudden = (causes.find(({ cause }) => cause === "line let go")?.share ?? 0) >= 0.5;
  return [
    ...early.map(
      ({ name, clutch, early: share }) =>
        `"${capital(wordsFor({ name: name as EventName, ...(clutch === undefined ? {} : { clutch }) }))}" came before the leak opened ${outOfTwenty(share)}: ` +
        "the unit lacked that much from the start.",
    ),
    ...(sudden && stands !== undefined && (slips === undefined || stands < slips)
      ? [
          `"No drive" stands before "first sustained slip": of a line that lets go the pressure is gone so soon that the vehicle can stand before a clutch has slipped for a second under load.`,
        ]
      : []),
    ...(sudden
      ? [
          "All of it comes within minutes of the opening; each event is told from when the least that it ever takes was missing.",
        ]
      : []),
  ];
}

const capital = (text: string): string => text[0]!.toUpperCase() + text.slice(1);

/** Why nothing runs at a leak that there is. */
export function flowNotes({ answer: { flow, causes } }: Answered): string[] {
  if (flow === null) return [];
  const parted = causes[0]?.cause === "line let go";
  return [
    ...(flow.hot.middle === 0
      ? ["Idling hot nothing runs: so little fluid is left that the pump has no pressure to push any out."]
      : []),
    ...(flow.parked.middle === 0
      ? [
          parted
            ? "Parked nothing runs: with the engine off nothing presses, and what the parted line held has run out by then."
            : "Parked nothing runs: with the engine off nothing presses, and the fluid at rest stands no higher than the leak.",
        ]
      : []),
  ];
}

/** Why a steel may be hotter in what is told of laws than in the table of clutches; `walks` guesses stand in that. */
export const outsideNotes = ({ answer: { outside } }: Answered, walks: number): string[] =>
  outside.length === 0 || walks === 0
    ? []
    : [
        `Laws are watched by averages, over many guesses; the table of clutches tells of the ${walks === 1 ? "one" : walks} driven trip by trip. So a steel may be hotter here than "hottest steel" there.`,
      ];
