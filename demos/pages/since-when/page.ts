// Since when: from a few facts of the bay to when the leak opened, how sure that is, and what to look at next.

import { computed, effect, signal, untracked, type ReadonlySignal } from "@preact/signals-core";
import type { Prepared } from "../../../src/duty/prepared.ts";
import type { Answer } from "../../../src/lookback/answer/answer.ts";
import type { EarlyAnswer } from "../../../src/lookback/early.ts";
import type { EventName } from "../../../src/history/watch.ts";
import { eventDates } from "../../../src/plots/event-dates.ts";
import { missingCurve } from "../../../src/plots/missing-curve.ts";
import { openingDots } from "../../../src/plots/opening-dots.ts";
import type { Picture } from "../../../src/plots/picture.ts";
import { show } from "../../../src/units/show.ts";
import { calendarOf, curveOf } from "../../look-back/curve.ts";
import { causeBars, nextLookBars } from "../../look-back/bars.ts";
import { earlyWords } from "../../look-back/early-words.ts";
import { goneTable } from "../../look-back/goes-with.ts";
import { noOpening } from "../../look-back/instead.ts";
import { aheadTable, assumptionTable, causeTable, eventTable, openingTable } from "../../look-back/tables.ts";
import { eventNotes } from "../../look-back/notes.ts";
import { toldEvents } from "../../look-back/events.ts";
import { narrowing, narrowingNote, reservations, sentences, type Telling } from "../../look-back/told.ts";
import { refillTable } from "../../report/part-table.ts";
import { alone } from "../../report/said.ts";
import { cautions } from "../../report/cautions.ts";
import { choice } from "../parts/choice.ts";
import { dated } from "../parts/dated.ts";
import { day } from "../parts/day.ts";
import { element } from "../parts/element.ts";
import { figure } from "../parts/figure.ts";
import { job, type Job } from "../parts/job.ts";
import { masthead } from "../parts/masthead.ts";
import { caution, prose, section, statements } from "../parts/prose.ts";
import { slider } from "../parts/slider.ts";
import { tableOf } from "../parts/table.ts";
import { workBar } from "../parts/work-bar.ts";
import { system } from "../parts/units.ts";
import { claims } from "./claims.ts";
import { factsAtFirst, factsText, readFacts, weekOf, type Facts } from "./facts.ts";
import type { Question } from "./look-worker.ts";

export { claims } from "./claims.ts";
export const title = "Since when";

/** The workers that the page may hire. */
export interface Hands {
  readonly early: () => Worker;
  readonly prepare: () => Worker;
  readonly look: () => Worker;
}

/** How long the controls must rest before the work begins anew [ms]. */
const REST = 400;
/** Guesses with which facts are asked about first. */
const GUESSES = 4000;
const mile = 1609.344;
const quart = 0.946352946e-3;

/** Arranges the page, top to bottom. */
export default function page(main: HTMLElement, hands: Hands): void {
  main.before(masthead(title, "../index.html"));
  const [early, week, look] = [
    job<Facts, EarlyAnswer>(hands.early),
    job<Facts, Prepared>(hands.prepare),
    job<Question, Answer>(hands.look),
  ];
  const { controls, facts } = settings();
  const resting = startOnChange(facts, early, week, look);
  main.append(
    prose(
      "A customer comes in low on fluid, and something drips. Since when? What is missing divided by what drips now is no answer: a leak grows, and nobody saw it. This page tries every way in which it may have grown, drives each of them through the weeks, and keeps those that explain what the bay sees. What is left is the answer, with its doubt.",
      "lead",
    ),
    statements(claims),
    section(
      "What is known",
      prose(
        "The vehicle is an *invented* van, and so are all figures here. For a vehicle of your own write a file and run *npm run lookback*.",
      ),
      element("div", { class: "controls wide" }, ...controls),
      workOf(early, week, look, facts, resting),
      caution(cautions.slice(0, 3).join(" ")),
    ),
    ...results(look, facts),
  );
}

function settings(): { controls: Node[]; facts: ReadonlySignal<Facts> } {
  const missing = slider("Missing", {
    from: 0.5 * quart,
    to: 5 * quart,
    at: factsAtFirst.missing,
    steps: 18,
    say: (value, units) => show(value, "volume", units),
  });
  const drops = slider("Drops counted in a minute, idling hot", {
    from: 0,
    to: 120,
    at: factsAtFirst.drops,
    steps: 60,
    say: (value) => `${value} drops`,
  });
  const since = slider("Driven since it was last known full", {
    from: 400 * mile,
    to: 8000 * mile,
    at: factsAtFirst.since,
    steps: 19,
    say: (value, units) => show(value, "distance", units),
  });
  const perWeek = slider("Driven in a week", {
    from: 100 * mile,
    to: 600 * mile,
    at: factsAtFirst.perWeek,
    steps: 10,
    say: (value, units) => show(value, "distance", units),
  });
  const date = day("Came in on", factsAtFirst.date);
  const place = choice(
    "Where it drips",
    [
      ["supply-line", "supply line, before the cooler"],
      ["return-line", "return line, behind it"],
      ["pan", "pan"],
    ] as const,
    factsAtFirst.place,
  );
  const shield = choice(
    "A shield under it",
    [
      ["yes", "yes"],
      ["no", "no"],
    ] as const,
    factsAtFirst.shield ? "yes" : "no",
  );
  const felt = choice(
    "Did it flare or slip?",
    [
      ["not asked", "not asked"],
      ["never", "never"],
      ["this week", "first this week"],
    ] as const,
    factsAtFirst.felt,
  );
  const facts = computed<Facts>(() => ({
    missing: missing.value.value,
    drops: drops.value.value,
    since: since.value.value,
    perWeek: perWeek.value.value,
    date: date.value.value,
    place: place.value.value,
    shield: shield.value.value === "yes",
    felt: felt.value.value,
  }));
  return {
    controls: [missing, drops, since, perWeek, date, place, shield, felt].map((control) => control.element),
    facts,
  };
}

type Early = Job<Facts, EarlyAnswer>;
type Week = Job<Facts, Prepared>;
type Look = Job<Question, Answer>;

const sameWeek = (a: Facts, b: Facts) => JSON.stringify(weekOf(a)) === JSON.stringify(weekOf(b));

/** Asks what the facts say; who has just answered another question about this week still has it. */
function ask(look: Look, facts: Facts, week: Prepared, guesses: number): void {
  const has =
    look.state.value === "done" && look.last.value !== null && sameWeek(look.last.value.ask.facts, facts);
  look.start({ facts, prepared: has ? "as before" : week, guesses });
}

/**
 * A change of facts asks for the early answer, and for the whole one as soon as their week is prepared. Tells whether a change still waits for the controls to rest.
 */
function startOnChange(
  facts: ReadonlySignal<Facts>,
  early: Early,
  week: Week,
  look: Look,
): ReadonlySignal<boolean> {
  const asked = signal<Facts | null>(null);
  let waiting: ReturnType<typeof setTimeout> | undefined;
  facts.subscribe((now) => {
    clearTimeout(waiting);
    const go = () => {
      asked.value = now;
      early.start(now);
    };
    if (asked.peek() === null) go();
    else waiting = setTimeout(go, REST);
  });
  let preparing: Facts | null = null;
  effect(() => {
    const now = asked.value;
    if (now === null) return;
    const prepared = week.last.value;
    if (prepared !== null && sameWeek(prepared.ask, now)) {
      untracked(() => {
        week.cancel(); // another one, of facts that were set in between
        ask(look, now, prepared.result, GUESSES);
      });
      return;
    }
    untracked(() => {
      look.cancel();
      if (week.state.value === "computing" && preparing !== null && sameWeek(preparing, now)) return;
      preparing = weekOf(now);
      week.start(preparing);
    });
  });
  return computed(() => asked.value !== facts.value);
}

/** Guesses for the next answer to the facts that are set: twice as many where the last one says that they were too few. */
function guessesFor({ last }: Look, facts: Facts): number {
  if (last.value === null || last.value.ask.facts !== facts) return GUESSES;
  const { ask, result } = last.value;
  return result.trust.word === "run longer" ? 2 * ask.guesses : ask.guesses;
}

/** Progress, cancel, compute again, and what a listener is told. */
function workOf(
  early: Early,
  week: Week,
  look: Look,
  facts: ReadonlySignal<Facts>,
  resting: ReadonlySignal<boolean>,
): HTMLElement {
  const { element: bar, progress, cancel, told, where } = workBar();
  const busy = computed(() =>
    week.state.value === "computing" ? week : look.state.value === "computing" ? look : null,
  );
  const next = computed(() => guessesFor(look, facts.value));
  const isDone = computed(
    () =>
      look.state.value === "done" && look.last.value !== null && look.last.value.ask.facts === facts.value,
  );
  const more = computed(() => look.last.value !== null && next.value > look.last.value.ask.guesses);
  const withGuesses = computed(() => (next.value === GUESSES ? "" : ` with ${next.value} guesses`));
  cancel.addEventListener("click", () => {
    if (busy.value !== null) {
      busy.value.cancel();
      return;
    }
    const prepared = week.last.value;
    if (prepared !== null && sameWeek(prepared.ask, facts.value))
      ask(look, facts.value, prepared.result, next.value);
    else week.start(weekOf(facts.value));
  });
  effect(() => {
    progress.value = busy.value?.step.value.share ?? (isDone.value ? 1 : 0);
    cancel.textContent = busy.value === null ? `Compute again${withGuesses.value}` : "Cancel";
    where.textContent =
      busy.value === null ? "" : `${Math.round(100 * busy.value.step.value.share)} % of this part`;
  });
  effect(() => {
    const parts = [week, look].map(({ state, problem }) =>
      state.value === "failed" ? `It failed: ${problem.value}.` : "",
    );
    const now =
      week.state.value === "computing"
        ? "Preparing the week: half a minute, once for every use of the vehicle."
        : look.state.value === "computing"
          ? `Asking every explanation${withGuesses.value}.`
          : isDone.value
            ? more.value
              ? `Done. Runs differ: compute again${withGuesses.value} before leaning on it.`
              : "Done."
            : resting.value
              ? "One moment."
              : "Cancelled.";
    told.replaceChildren(
      ...dated([now, ...parts, isDone.value ? "" : earlySays(early, facts.value)].join(" ").trim()),
    );
  });
  return bar;
}

function earlySays({ last }: Early, facts: Facts): string {
  if (last.value === null || last.value.ask !== facts) return "";
  const { ask, result } = last.value;
  return earlyWords(readFacts(ask), result.opened);
}

/** Everything that shows the last answer. */
function results({ last, state }: Look, facts: ReadonlySignal<Facts>): HTMLElement[] {
  const telling = computed<Telling | null>(() =>
    last.value === null
      ? null
      : { read: readFacts(last.value.ask.facts), answer: last.value.result, looks: false },
  );
  const draw =
    (drawing: (told: Telling, picture: Picture) => Element | null) =>
    (picture: Picture): Element | null =>
      telling.value === null ? null : drawing(telling.value, picture);
  const lines = element("div", { class: "answer" });
  const table = (make: (told: Telling) => Parameters<typeof tableOf>[0]) => {
    const place = element("div", { class: "wide" });
    effect(() => {
      if (telling.value === null) return;
      const made = make(telling.value);
      place.replaceChildren(...(made.rows.length === 0 ? [] : [tableOf(made)]));
    });
    return place;
  };
  effect(() => {
    const told = telling.value;
    if (told === null) return;
    const { value: units } = system;
    const asked = prose(factsText(last.value!.ask.facts, alone(units)), "asked");
    lines.replaceChildren(
      asked,
      ...[...sentences(told, units), ...reservations(told)].map((says) => prose(says)),
    );
  });
  const notes = (make: (told: Telling) => readonly string[]) => {
    const place = element("div", {});
    effect(() => {
      if (telling.value !== null) place.replaceChildren(...make(telling.value).map((says) => prose(says)));
    });
    return place;
  };
  const box = [
    section("The answer in plain words", lines),
    section(
      "When it opened",
      figure(
        "Each dot is one case like this, all as likely: count those on either side of a date. Under them, thin, nine tenths of the cases; thick, half; stroke, the middle.",
        draw((told, picture) => {
          const { opened } = told.answer;
          const calendar = calendarOf(told);
          return opened === null
            ? null
            : openingDots({ calendar, dots: opened.dots, when: opened.when }, picture);
        }),
        "wide",
      ),
      table(openingTable),
      notes(({ answer }) => (answer.opened === null ? [noOpening] : [])),
    ),
    section(
      "Was it the leak?",
      figure(
        "What may be behind it: bars, after the evidence; strokes, before it.",
        draw(({ answer }, picture) => causeBars(answer, picture)),
        "wide",
      ),
      table(causeTable),
    ),
    section(
      "What was missing, and what that did",
      figure(
        "What was missing: pale, nine cases in ten; darker, half of them; line, the middle; dots with two standard errors, what was measured.",
        draw((told, picture) => missingCurve(curveOf(told), picture)),
        "wide",
      ),
      figure(
        "When it happened, of the cases in which it had by the visit: thin, nine tenths; thick, half; stroke, the middle. At the right, in how many it had.",
        draw((told, picture) =>
          eventDates(
            {
              calendar: calendarOf(told),
              events: toldEvents(told).map((event) => ({ ...event, name: event.name as EventName })),
            },
            picture,
          ),
        ),
        "wide",
      ),
      table(eventTable),
      notes(eventNotes),
    ),
    section(
      "What goes with it",
      table(goneTable),
      table(({ read }) => refillTable(read.visit.unit, read.own.build)),
    ),
    section(
      "What to look at next",
      figure(
        "How closely the opening date would be known after each look, as a standard deviation: bars; strokes, now.",
        draw(({ answer }, picture) =>
          narrowing(answer).length === 0 ? null : nextLookBars(answer, picture),
        ),
        "wide",
      ),
      table(aheadTable),
      notes(narrowingNote),
    ),
    section("What this rests on", table(assumptionTable), caution(cautions.slice(3).join(" "))),
  ];
  // What answers other facts than those that are set now is marked.
  effect(() => {
    const old = last.value !== null && (state.value !== "done" || last.value.ask.facts !== facts.value);
    for (const part of box) part.classList.toggle("old", old);
  });
  return box;
}
