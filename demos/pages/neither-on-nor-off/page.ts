// Neither on nor off: where "no pressure, no clutch, no harm" is right, and where clutches burn.

import { effect } from "@preact/signals-core";
import type { FadeRow } from "../../../src/history/fade.ts";
import { clutchStates } from "../../../src/plots/clutch-states.ts";
import { fadeTime } from "../../../src/plots/fade-time.ts";
import { slipHeatAgainstPressure } from "../../../src/plots/slip-heat.ts";
import { rpm } from "../../../src/units/literals.ts";
import { show, type ShownKind, type UnitSystem } from "../../../src/units/show.ts";
import { heats, places } from "../../fade-marks.ts";
import { dated } from "../parts/dated.ts";
import { element } from "../parts/element.ts";
import { figure } from "../parts/figure.ts";
import { job } from "../parts/job.ts";
import { masthead } from "../parts/masthead.ts";
import { caution, prose, section, statements } from "../parts/prose.ts";
import { slider } from "../parts/slider.ts";
import { system } from "../parts/units.ts";
import { benchAtFirst, clutch, onBench, reading, van as invention } from "./bench.ts";
import { ends, fading, inBetween, van } from "./claims.ts";
import { uphill } from "./fades.ts";
import { historySection } from "./history-section.ts";
import { atFirst, caseOf } from "./van.ts";

export { claims } from "./claims.ts";
export const title = "Neither on nor off";

/** The workers that the page may hire. */
export interface Hands {
  readonly history: () => Worker;
  readonly fade: () => Worker;
}

/** Arranges the page, top to bottom. */
export default function page(main: HTMLElement, hands: Hands): void {
  main.before(masthead(title, "../index.html"));
  main.append(
    prose(
      "“No pressure, no clutch, no harm,” they say of a transmission that has lost its fluid: without pressure the clutches let go, and what has let go cannot burn. The saying is right about both ends and silent about the way between them. On that way clutches burn.",
      "lead",
    ),
    section(
      "Two ends that do no harm",
      prose(
        "A multi-plate clutch is a pack of plates, lined and steel in turn. A return spring holds them apart; pressure on a piston squeezes them together. How hard it squeezes decides how much torque the pack can carry: its *capacity*.",
      ),
      figure(
        "A pack of plates in three states. Steel plates turn with the outside, lined ones with the inside; what the piston squeezes must turn as one, or rub.",
        clutchStates,
        "wide",
      ),
      statements(Object.values(ends)),
      prose(
        "Heat needs two things at once, torque and slip. At the one end there is slip without torque, at the other torque without slip. So far the saying is right.",
      ),
    ),
    section(
      "The window between kiss and lock",
      prose(
        "A pressure that has fallen below lock but not yet below kiss neither carries nor lets go. The plates are pressed together and turn at different speeds.",
      ),
      statements([inBetween.both]),
      ...windowBench(),
      statements([inBetween.halfway, inBetween.cliff, inBetween.sameWorst]),
      prose(
        "The two lines are two simple engines that ask the same torque of the clutch at the output's speed. A real engine behind a converter is neither of them; the van further down has its own.",
      ),
      caution(
        "A gauge reading within the window is a reason to stop, not to test on. A stall test lasts at most five seconds and is never made at low pressure.",
      ),
    ),
    section(
      "It is a question of time",
      prose(
        "Harm is heat, and heat is power times time. So do not ask whether the pressure is there; ask how long it takes through the window. Here the van climbs one in twenty in third gear at a steady 31 mph (50 km/h) and loses its line pressure: once and for good, or on and off every second and a half, as a pickup does that gulps.",
      ),
      fadePicture(hands.fade),
      statements(Object.values(fading)),
      prose(
        "A gulp is worse than its length because the engine runs up while nothing holds it, and each return of the pressure catches it at full squeeze.",
      ),
    ),
    section(
      "One van, one hole",
      invented(),
      ...historySection(hands.history),
      element("h3", {}, "What stays true with the hole that the page opens with"),
      statements(Object.values(van)),
      caution(
        "A vehicle that is losing fluid is towed with its driven wheels off the ground, not driven in. What was lost, and what is drained, is regulated waste. The maker's service information and local rules come first.",
      ),
      caution(
        "This van is invented. Worked out for a real one, such a history is an estimate: evidence with an interval, not proof of anyone's fault.",
      ),
    ),
    section(
      "What to say instead",
      prose(
        "Gone at once, the pressure takes the clutch with it and does no harm. Going slowly, it burns in proportion to the time. Coming and going, it burns each time it comes back. A transmission that flares or slips is in the window *now*: stop, and look at the stick first.",
      ),
      origins(),
    ),
  );
  main.after(
    element(
      "footer",
      {},
      element(
        "p",
        {},
        "Works without a network. Nothing that you set leaves this device. Print it: the controls stay away and the pictures come along.",
      ),
    ),
  );
}

/** The van in its own numbers. */
function invented(): HTMLElement {
  const { unit, week } = caseOf(atFirst);
  const told = prose("");
  effect(() => {
    told.replaceChildren(
      ...dated(
        `An invented parcel van: ${unit.build.gears.length} gears, ${show(unit.build.fill, "volume", system.value)} of ` +
          `fluid, ${week.days.flat().length} delivery rounds a week. On its second day a hole opens. Choose the hole; the whole of ` +
          `what follows is computed second by second, from the road to the clutch plates.`,
      ),
    );
  });
  return told;
}

const saying =
  (kind: ShownKind) =>
  (value: number, units: UnitSystem): string =>
    show(value, kind, units);

function windowBench(): HTMLElement[] {
  const pressure = slider("Apply pressure to look at", {
    from: 0,
    to: 600e3,
    at: benchAtFirst.pressure,
    steps: 120,
    say: saying("pressure"),
  });
  const torque = slider("Torque that is asked of the clutch", {
    from: 50,
    to: 500,
    at: benchAtFirst.torque,
    steps: 45,
    say: saying("torque"),
  });
  const output = slider("Speed of the output side", {
    from: 0,
    to: rpm(3000),
    at: benchAtFirst.output,
    steps: 30,
    say: saying("angularSpeed"),
  });
  const spring = slider("Force of the return spring", {
    from: 0.5 * clutch.spring,
    to: 3 * clutch.spring,
    at: benchAtFirst.spring,
    steps: 25,
    say: (value) => `${(value / clutch.spring).toFixed(1)} times as built`,
  });
  const data = () =>
    onBench({
      pressure: pressure.value.value,
      torque: torque.value.value,
      output: output.value.value,
      spring: spring.value.value,
    });
  const told = element("p", { class: "reading" });
  effect(() => {
    told.replaceChildren(...dated(reading(data(), system.value)));
  });
  return [
    element(
      "div",
      { class: "controls wide" },
      pressure.element,
      torque.element,
      output.element,
      spring.element,
    ),
    figure(
      `Slip heat of the van's ${clutch.name} against its apply pressure, steady, plates warm. Both engines end at 5600 rpm.`,
      (picture) => slipHeatAgainstPressure(data(), picture),
      "wide",
    ),
    told,
  ];
}

function fadePicture(hire: () => Worker): HTMLElement {
  const work = job<null, FadeRow[]>(hire);
  work.start(null);
  const caption = element("span");
  effect(() => {
    const failed = work.state.value === "failed" ? ` It could not be computed: ${work.problem.value}.` : "";
    caption.textContent = `Slip heat of the weakest clutch that holds third gear, both scales in steps of ten.${failed}`;
  });
  return figure(
    caption,
    (picture) =>
      work.last.value
        ? fadeTime(
            { rows: work.last.value.result, places, heats: heats(invention, uphill.gear, picture.system) },
            picture,
          )
        : null,
    "wide",
  );
}

/** How many of the van's numbers come from where. */
function origins(): HTMLElement {
  const counts = new Map<string, number>();
  for (const { origin } of Object.values(caseOf(atFirst).origins)) {
    const kind = origin?.kind ?? "chosen for this page";
    counts.set(kind, (counts.get(kind) ?? 0) + 1);
  }
  const list = [...counts]
    .sort(([, a], [, b]) => b - a)
    .map(([kind, count]) => element("li", {}, `${count} ${kind}`));
  return element(
    "details",
    {},
    element("summary", {}, "Where the van's numbers come from"),
    element(
      "p",
      {},
      "No real vehicle, maker or shop stands behind this van. Each of its numbers carries its origin in the case's own file; here they are counted. Published means that the source was read, recalled that it was not read again, assumed that a reason stands beside it.",
    ),
    element("ul", {}, ...list),
  );
}
