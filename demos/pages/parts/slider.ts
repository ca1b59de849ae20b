// A labelled slider: a native range input that says its value in the reader's units.

import { effect, signal, type ReadonlySignal } from "@preact/signals-core";
import type { UnitSystem } from "../../../src/units/show.ts";
import { dated } from "./dated.ts";
import { element, newId } from "./element.ts";
import { system } from "./units.ts";

/** From where to where, at what at first, and how a value is said; `spread` in equal steps or in equal ratios. */
export interface SliderSpec {
  readonly from: number;
  readonly to: number;
  readonly at: number;
  readonly steps: number;
  readonly spread?: "even" | "ratio";
  readonly say: (value: number, system: UnitSystem) => string;
}

/** The value of a slider that stands on a step; equal ratios are rounded to two digits, as people name sizes. */
export function valueAt({ from, to, steps, spread }: SliderSpec, step: number): number {
  if (spread !== "ratio") return from + ((to - from) * step) / steps;
  return Number((from * (to / from) ** (step / steps)).toPrecision(2));
}

/** The step that comes closest to a value. */
export function stepFor({ from, to, steps, spread }: SliderSpec, value: number): number {
  const share =
    spread === "ratio" ? Math.log(value / from) / Math.log(to / from) : (value - from) / (to - from);
  return Math.round(share * steps);
}

export function slider(
  label: string,
  spec: SliderSpec,
): { readonly element: HTMLElement; readonly value: ReadonlySignal<number> } {
  const id = newId("slider");
  const first = stepFor(spec, spec.at);
  const value = signal(valueAt(spec, first));
  const input = element("input", { type: "range", id, min: 0, max: spec.steps, step: 1, value: first });
  // Listeners hear the slider's own value text; an output element would say it a second time.
  const output = element("span", { class: "value", "aria-hidden": "true" });
  input.addEventListener("input", () => (value.value = valueAt(spec, input.valueAsNumber)));
  effect(() => {
    const said = spec.say(value.value, system.value);
    output.replaceChildren(...dated(said));
    input.setAttribute("aria-valuetext", said);
  });
  return {
    element: element("div", { class: "slider" }, element("label", { for: id }, label), output, input),
    value,
  };
}
