// One of a few: native radio buttons under a legend.

import { signal, type ReadonlySignal } from "@preact/signals-core";
import { element, newId } from "./element.ts";

/** Radio buttons for pairs of value and words; the signal holds the chosen value. */
export function choice<T extends string>(
  legend: string,
  options: readonly (readonly [T, string])[],
  at: NoInfer<T>,
): { readonly element: HTMLElement; readonly value: ReadonlySignal<T> } {
  const value = signal<T>(at);
  const group = newId("choice");
  const radios = options.map(([option, words]) => {
    const input = element("input", { type: "radio", name: group, value: option });
    input.checked = option === at;
    input.addEventListener("change", () => (value.value = option));
    return element("label", {}, input, element("span", {}, words));
  });
  return {
    element: element("fieldset", { class: "choice" }, element("legend", {}, legend), ...radios),
    value,
  };
}
