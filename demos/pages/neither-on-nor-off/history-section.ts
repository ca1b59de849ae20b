// The van's history: what the reader sets, the work beside the page, and everything that shows its result.

import { computed, effect, signal, untracked } from "@preact/signals-core";
import { HOT } from "../../../src/bay/ready.ts";
import type { CloseUp } from "../../../src/history/record.ts";
import type { History } from "../../../src/history/simulate.ts";
import { closeUpStrip } from "../../../src/plots/close-up-strip.ts";
import { wordsFor } from "../../../src/plots/event-words.ts";
import { historyStrip } from "../../../src/plots/history-strip.ts";
import { show } from "../../../src/units/show.ts";
import { choice } from "../parts/choice.ts";
import { dated } from "../parts/dated.ts";
import { element } from "../parts/element.ts";
import { figure } from "../parts/figure.ts";
import { job } from "../parts/job.ts";
import { caution, prose } from "../parts/prose.ts";
import { slider } from "../parts/slider.ts";
import { workBar } from "../parts/work-bar.ts";
import { system } from "../parts/units.ts";
import { van } from "./bench.ts";
import { volumeOf } from "../../../src/inputs/plan.ts";
import { eventColumns, eventRows, holeText, settingsText, storyText, type Beginning } from "./story.ts";
import type { Told } from "./sticks.ts";
import { atFirst, caseOf, type Settings } from "./van.ts";

/** How long the controls must rest before the work begins anew [ms]. */
const REST = 400;
const LAST_HOURS = 10;

/** Controls, work, story, strip, close-ups and table; the first work begins at once. */
export function historySection(hire: () => Worker): Node[] {
  const work = job<Settings, Told>(hire);
  const { start, unit } = caseOf(atFirst);
  const beginning: Beginning = { ...start, unit };

  const hole = slider("Diameter of the hole", {
    from: 0.06e-3,
    to: 0.5e-3,
    at: atFirst.hole,
    steps: 36,
    spread: "ratio",
    say: holeText,
  });
  const place = choice(
    "Where it is",
    [
      ["supply-line", "supply line, before the cooler"],
      ["return-line", "return line, behind it"],
      ["pan", "pan, near its floor"],
      ["shaft-seal", "seal at the converter's hub"],
    ] as const,
    atFirst.place,
  );
  const mass = slider("Van with its load", {
    from: 2200,
    to: 3500,
    at: atFirst.mass,
    steps: 13,
    say: (value, units) => show(value, "mass", units),
  });
  const settings = computed<Settings>(() => ({
    ...atFirst,
    hole: hole.value.value,
    place: place.value.value,
    mass: mass.value.value,
  }));

  let waiting: ReturnType<typeof setTimeout> | undefined;
  settings.subscribe((asked) => {
    clearTimeout(waiting);
    const go = () => work.start(asked);
    if (untracked(() => work.state.value) === "nothing yet") go();
    else waiting = setTimeout(go, REST);
  });

  return [
    element("div", { class: "controls wide" }, hole.element, mass.element, place.element),
    workOf(work, settings, beginning),
    caution(
      "Hot fluid under pressure burns and can be injected through skin: never feel for a leak with the hand. Fluid on a hot exhaust can catch fire; a raised vehicle needs stands.",
    ),
    ...results(work.last, beginning, work.state),
  ];
}

/** Progress, cancel, compute again, and what a listener is told. */
function workOf(
  work: ReturnType<typeof job<Settings, Told>>,
  settings: { readonly value: Settings },
  beginning: Beginning,
): HTMLElement {
  const { element: bar, progress, cancel, told, where } = workBar();
  cancel.addEventListener("click", () => {
    if (work.state.value === "computing") work.cancel();
    else work.start(settings.value);
  });
  effect(() => {
    const computing = work.state.value === "computing";
    progress.value = computing ? work.step.value.share : work.state.value === "done" ? 1 : 0;
    const { day, lost } = work.step.value;
    where.textContent = computing
      ? `Day ${day}, ${show(volumeOf(beginning, lost), "volume", system.value)} lost`
      : "";
    cancel.textContent = computing ? "Cancel" : "Compute again";
  });
  effect(() => {
    const last = work.last.value;
    const kept = last ? ` Still shown: ${settingsText(last.ask, system.value)}.` : "";
    const texts = {
      "nothing yet": "",
      computing: `Computing the history.${kept}`,
      done: last ? `Done: ${settingsText(last.ask, system.value)}.` : "",
      cancelled: `Cancelled.${kept}`,
      failed: `It failed: ${work.problem.value}.${kept}`,
    };
    told.replaceChildren(...dated(texts[work.state.value]));
  });
  return bar;
}

type Last = ReturnType<typeof job<Settings, Told>>["last"];

function results(last: Last, beginning: Beginning, state: { readonly value: string }): Node[] {
  const { low, full } = van.sump.stick;
  const whole = choice(
    "Show",
    [
      ["all", "the whole history"],
      ["end", `its last ${LAST_HOURS} running hours`],
    ] as const,
    "all",
  );
  const story = prose("");
  effect(() => {
    if (last.value)
      story.replaceChildren(
        ...dated(
          `With ${settingsText(last.value.ask, system.value)}: ${storyText(last.value.result, beginning, system.value)}`,
        ),
      );
  });
  const strip = figure(
    "One point a trip. Thin lines mark what happened; red ones are harm. The last hours are short on this axis: look at them alone, or at the close-ups below.",
    (picture) => {
      if (!last.value) return null;
      const { result } = last.value;
      const { odometer } = beginning;
      const from = whole.value.value === "end" ? beginsLate(result) : 0;
      const marks = { low, full, trimLimit: van.shiftControl.trimLimit, odometer, from };
      return historyStrip({ history: result, ...marks }, picture);
    },
  );
  const box = element(
    "div",
    { class: "wide" },
    whole.element,
    strip,
    element("h3", {}, "Looked at closely"),
    ...closeUps(last),
    eventTable(last, beginning),
  );
  effect(() => {
    box.classList.toggle(
      "old",
      state.value !== "done" && state.value !== "nothing yet" && last.value !== null,
    );
  });
  return [story, box];
}

/** Running time of the trip from which the last hours are shown [s]. */
function beginsLate({ trips }: History): number {
  const end = trips.at(-1)?.running ?? 0;
  return trips.find(({ running }) => running >= end - LAST_HOURS * 3600)?.running ?? 0;
}

function closeUps(last: Last): Node[] {
  const chosen = signal<CloseUp["about"]>("first sustained slip");
  const place = element("div");
  effect(() => {
    const abouts = last.value?.result.closeUps.map(({ about }) => about) ?? [];
    const kept = untracked(() => chosen.value);
    const at = abouts.includes(kept) ? kept : abouts.at(-1);
    if (at === undefined) {
      place.replaceChildren(last.value === null ? "" : "Nothing happened that was worth a closer look.");
      return;
    }
    const moments = choice(
      "Moment",
      abouts.map((about) => [about, wordsFor({ name: about })] as const),
      at,
    );
    moments.value.subscribe((about) => {
      chosen.value = about;
    });
    place.replaceChildren(moments.element);
  });
  const strip = figure(
    "Seconds before and after the moment. Fluid runs away from the pickup, the pump draws gas, the pressure sags, the clutch carries less than is asked, it slips, and the slip is heat.",
    (picture) => {
      if (!last.value) return null;
      const { closeUps, events } = last.value.result;
      const closeUp = closeUps.find(({ about }) => about === chosen.value);
      const moment = events.find(({ name }) => name === chosen.value)?.clock;
      return closeUp && moment !== undefined ? closeUpStrip({ closeUp, events, moment }, picture) : null;
    },
  );
  return [place, strip];
}

function eventTable(last: Last, beginning: Beginning): HTMLElement {
  const place = element("div");
  effect(() => {
    if (!last.value) return;
    const columns = eventColumns(system.value);
    const cell = (tag: "th" | "td", text: string, more: Record<string, string> = {}) =>
      element(tag, more, ...dated(text));
    place.replaceChildren(
      element(
        "table",
        { class: "cards", role: "table" },
        element(
          "caption",
          {},
          "What happened, in the order of time. ",
          element(
            "span",
            {},
            ...dated(
              `Leak as it would be seen at the end of that trip, idling; stick as it would read idling in park, level, at ${show(HOT, "temperature", system.value)}.`,
            ),
          ),
        ),
        element(
          "thead",
          { role: "rowgroup" },
          element(
            "tr",
            { role: "row" },
            cell("th", "event", { scope: "col", role: "columnheader" }),
            ...columns.map((text) => cell("th", text, { scope: "col", role: "columnheader" })),
          ),
        ),
        element(
          "tbody",
          { role: "rowgroup" },
          ...eventRows(last.value.result, beginning, system.value).map(({ name, condition, grave, cells }) =>
            element(
              "tr",
              { role: "row", ...(grave ? { class: "grave" } : {}) },
              cell("th", name, { scope: "row", role: "rowheader", title: condition }),
              ...cells.map((text, i) => cell("td", text, { role: "cell", "data-label": columns[i]! })),
            ),
          ),
        ),
      ),
    );
  });
  return place;
}
