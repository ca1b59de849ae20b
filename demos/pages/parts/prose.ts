// Prose, sections and cautions.

import type { Claim } from "./claim.ts";
import { dated } from "./dated.ts";
import { element } from "./element.ts";

/** A paragraph; *words between stars* are stressed. */
export function prose(text: string, className?: string): HTMLElement {
  return element("p", { class: className }, ...stressed(text));
}

/** A section under its heading. */
export function section(heading: string, ...children: readonly (Node | string)[]): HTMLElement {
  return element("section", {}, element("h2", {}, heading), ...children);
}

/** A caution where it applies. */
export function caution(text: string): HTMLElement {
  return element(
    "p",
    { class: "caution", role: "note" },
    element("strong", {}, "Caution. "),
    ...stressed(text),
  );
}

/** A statement that the tests hold the page to. */
export function stated({ says }: Claim): HTMLElement {
  return element("li", {}, ...stressed(says));
}

/** Statements below one another. */
export const statements = (claims: readonly Claim[]): HTMLElement =>
  element("ul", { class: "claims" }, ...claims.map(stated));

function stressed(text: string): (Node | string)[] {
  return text.split("*").flatMap((part, i) => (i % 2 === 1 ? [element("em", {}, part)] : dated(part)));
}
