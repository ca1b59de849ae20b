// A page as it reads once the reader has chosen a system of units, and the words that would betray the other one.

import { parseHTML } from "linkedom";

/** A number with a unit that only the other system has. */
const foreign = {
  US: /\d (?:km|km\/h|m\/s|m|mm|cm|µm|L|mL|L\/min|mL\/min|g(?!,)|kg|Pa|kPa|MPa|°C|degC|K|J|kJ|MJ|kW|W|N m|W\/K|kg\/L|cm³|cm²)(?![\w/²³])|\[(?:km|km\/h|mm|L|kPa|°C|K|kJ|MJ|kW|N m)\]/g,
  SI: /\d (?:mi|mph|ft|ft\/s|in|thou|qt|fl oz|qt\/min|oz|lb|psi|°F|BTU|hp|lb ft|lb\/gal|in²|in³)(?![\w/²³])|\[(?:mi|mph|in|qt|psi|°F|BTU|1000 BTU|hp|lb ft)\]/g,
} as const;

/**
 * What a page still says in the other system's units. A case's own words (its line about itself, the reasons for its numbers) stay
 * as they were written.
 */
export function foreignUnits(html: string, system: "US" | "SI"): string[] {
  const { document } = parseHTML(html);
  const hidden = system === "US" ? ".si" : ".us";
  for (const element of document.querySelectorAll(`style, ${hidden}, .quoted, .ranges td.prose`))
    element.remove();
  const texts = [
    ...document.querySelectorAll("h1, h2, p, li, figcaption, caption, th, td, text, legend"),
  ].map((element) => element.textContent ?? "");
  const cells = [...document.querySelectorAll("td")].map(
    (cell) => `${cell.getAttribute(`data-${system.toLowerCase()}`) ?? ""}`,
  );
  return [...texts, ...cells].flatMap((text) => text.match(foreign[system]) ?? []);
}
