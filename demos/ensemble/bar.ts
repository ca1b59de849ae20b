// How many histories are done, on a terminal in one line, elsewhere in a few.

import type { Terminal } from "../report/progress-bar.ts";

const WIDTH = 24;
const LINES = 4;

export interface MemberBar {
  tell(done: number, of: number): void;
  clear(): void;
}

export function memberBar(terminal: Terminal, now: () => number): MemberBar {
  const from = now();
  let [drawn, told] = [false, 0];
  const words = (done: number, of: number) => {
    const left = ((now() - from) / done) * (of - done);
    return `${done} of ${of} histories${done < of ? `, about ${Math.ceil(left / 1000)} s to go` : ""}`;
  };
  return {
    tell(done, of) {
      if (terminal.isTTY === true) {
        const full = Math.round((WIDTH * done) / of);
        terminal.write(`\r\x1b[2K[${"#".repeat(full)}${".".repeat(WIDTH - full)}] ${words(done, of)}`);
        drawn = true;
      } else if ((done / of) * LINES >= told + 1) {
        told = Math.floor((done / of) * LINES);
        terminal.write(`${words(done, of)}\n`);
      }
    },
    clear() {
      if (drawn) terminal.write("\r\x1b[2K");
      drawn = false;
    },
  };
}
