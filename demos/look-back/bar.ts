// A bar for work in parts, each with what it does: redrawn in its line, or a few plain lines where the output goes to a file.

import type { Terminal } from "../report/progress-bar.ts";

export interface PartBar {
  tell(share: number): void;
  clear(): void;
}

const WIDTH = 24;
const LINES = 4;

/** A bar for one part; `clock` tells milliseconds. */
export function partBar(says: string, terminal: Terminal, clock: () => number): PartBar {
  const began = clock();
  let [told, drawn] = [0, false];
  const words = (share: number) => {
    const left = Math.round(((clock() - began) * (1 - share)) / share / 1000);
    return `${says}: ${Math.round(100 * share)} %${share > 0.05 && share < 1 ? `, about ${left} s to go` : ""}`;
  };
  if (terminal.isTTY !== true) terminal.write(`${says} ...\n`);
  return {
    tell(share) {
      if (terminal.isTTY === true) {
        const full = Math.round(WIDTH * share);
        terminal.write(`\r\x1b[2K[${"#".repeat(full)}${".".repeat(WIDTH - full)}] ${words(share)}`);
        drawn = true;
      } else if (share * LINES >= told + 1) {
        told = Math.floor(share * LINES);
        terminal.write(`${words(share)}\n`);
      }
    },
    clear() {
      if (drawn) terminal.write("\r\x1b[2K");
      drawn = false;
    },
  };
}
