// Node's threads, asked for at run time only, so that a browser can load this file too.

import { GONE, type Hand } from "./hands.ts";

interface Thread {
  on(event: "message" | "error" | "exit", heard: (what: never) => void): void;
  postMessage(message: unknown): void;
  terminate(): Promise<unknown>;
}
interface Threads {
  readonly Worker: new (file: URL, options: object) => Thread;
  readonly parentPort: Port | null;
}
/** The end of a thread's line, in Node and in a browser. */
export interface Port {
  onmessage: ((event: { readonly data: unknown }) => void) | null;
  postMessage(message: unknown): void;
}
interface Cores {
  availableParallelism(): number;
}

/** A module of Node's own, or undefined where there is none: in a browser, or before Node 20.16. */
function built<T>(name: string): T | undefined {
  const { process } = globalThis as { process?: { getBuiltinModule?: (name: string) => unknown } };
  return process?.getBuiltinModule?.(name) as T | undefined;
}

/** Cores that may be used: those of the machine as far as they are this program's. */
export function cores(): number {
  const navigator = (globalThis as { navigator?: { hardwareConcurrency?: number } }).navigator;
  return built<Cores>("node:os")?.availableParallelism() ?? navigator?.hardwareConcurrency ?? 1;
}

/** The line to who started this thread. */
export const ownPort = (): Port =>
  built<Threads>("node:worker_threads")?.parentPort ?? (globalThis as unknown as Port);

/** What is young in a thread's heap may take so much [MB]: nearly all of it dies within a guess or a tick, and without a limit it takes what the machine has. */
const YOUNG = 8;

/** How to hire a thread that runs the worker beside a file (its `import.meta.url`); undefined where Node has none to give. */
export function threads(beside: string): (() => Hand) | undefined {
  const known = built<Threads>("node:worker_threads");
  if (known === undefined) return undefined;
  // In development the files are TypeScript, which has to be announced to a thread anew.
  const file = beside.endsWith(".ts") ? "./development.mjs" : "./worker.js";
  return () => {
    const thread = new known.Worker(new URL(file, beside), {
      // What the program was started with, such as a loader of its own files, would be loaded anew in every thread.
      execArgv: [],
      resourceLimits: { maxYoungGenerationSizeMb: YOUNG },
    });
    let answered: (answer: unknown) => void = () => {};
    let broke: (why: Error) => void = () => {};
    let ended: Error | undefined;
    thread.on("message", (answer: never) => answered(answer));
    thread.on("error", (why: never) => broke(why));
    thread.on("exit", (code) => {
      ended ??= new Error(`A computing thread ended early, with ${String(code)}.`);
      broke(ended);
    });
    return {
      listen(onAnswer, onBreak) {
        [answered, broke] = [onAnswer, onBreak];
      },
      post(message) {
        if (ended === undefined) thread.postMessage(message);
        else broke(ended);
      },
      dismiss() {
        ended = new Error(GONE);
        return thread.terminate();
      },
    };
  };
}
