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
    const left = Math.ceil((((now() - from) / done) * (of - done)) / 1000);
    const togo =
      done === 0 || done === of
        ? ""
        : `, about ${left < 100 ? `${left} s` : `${Math.round(left / 60)} min`} to go`;
    return `${done} of ${of} histories${togo}`;
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
