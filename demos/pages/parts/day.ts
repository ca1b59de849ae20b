// A day of the calendar: a native date input, whose value is the ISO date whatever way the browser shows it.

import { signal, type ReadonlySignal } from "@preact/signals-core";
import { element, newId } from "./element.ts";

/** Days that may be set: no vehicle of this kind is older, and a year that is half typed is none. */
const FIRST = "1950-01-01";
const LAST = "2099-12-31";

/** A labelled date; the signal keeps the last one that was whole, and what is not is said beside the input. */
export function day(
  label: string,
  at: string,
): { readonly element: HTMLElement; readonly value: ReadonlySignal<string> } {
  const [id, faultId] = [newId("day"), newId("fault")];
  const value = signal(at);
  const input = element("input", {
    type: "date",
    id,
    min: FIRST,
    max: LAST,
    required: "",
    value: at,
    "aria-describedby": faultId,
  });
  const fault = element("span", { id: faultId, class: "fault", "aria-live": "polite" });
  input.addEventListener("input", () => {
    const whole = input.value !== "" && input.validity.valid;
    if (whole) {
      value.value = input.value;
      fault.textContent = "";
    }
    input.setAttribute("aria-invalid", String(!whole));
  });
  // Half a date is no mistake as long as somebody is typing it.
  input.addEventListener("blur", () => {
    fault.textContent =
      input.getAttribute("aria-invalid") === "true"
        ? `Not a date from ${FIRST} to ${LAST}, for example ${at}: ${value.value} stays.`
        : "";
  });
  return {
    element: element("div", { class: "day" }, element("label", { for: id }, label), input, fault),
    value,
  };
}
