// A bar on a terminal, redrawn in its line; a few plain lines where the output goes to a file.

import type { Case } from "../../src/inputs/case.ts";
import { dateOf } from "../../src/inputs/plan.ts";
import type { Come } from "./compute.ts";

/** Where the bar is drawn: standard error, so that what is printed can be kept apart. */
export interface Terminal {
  readonly isTTY?: boolean | undefined;
  write(text: string): unknown;
}

export interface ProgressBar {
  tell(come: Come): void;
  /** Clears the bar's line, so that what follows stands alone. */
  clear(): void;
}

const WIDTH = 24;
const LINES = 4;

/** A bar for a case, as long as the longest that it may take; most cases end sooner. */
export function progressBar(given: Case, terminal: Terminal): ProgressBar {
  const days = Math.ceil(given.span / 86400);
  let told = 0;
  if (terminal.isTTY !== true)
    terminal.write(`Running "${given.name}", at most ${days} days. Ctrl-C calls it off.\n`);
  let drawn = false;
  const words = ({ day, running, mass }: Come) =>
    `${dateOf(given, day * 86400).slice(0, 10)}, day ${day} of at most ${days}, ` +
    `${(running / 3600).toFixed(0)} running hours, ${mass.toFixed(2)} kg inside`;
  return {
    tell(come) {
      if (terminal.isTTY === true) {
        const full = Math.round(WIDTH * come.share);
        terminal.write(`\r\x1b[2K[${"#".repeat(full)}${".".repeat(WIDTH - full)}] ${words(come)}`);
        drawn = true;
      } else if (come.share * LINES >= told + 1) {
        told = Math.floor(come.share * LINES);
        terminal.write(`${words(come)}\n`);
      }
    },
    clear() {
      if (drawn) terminal.write("\r\x1b[2K");
      drawn = false;
    },
  };
}
