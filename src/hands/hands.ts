// Hands that share the work: threads in Node, workers in a browser, or the program's own time where there are neither.

/** What a hand may say on its way to an answer: the share of the task that is done. */
export interface SoFar {
  readonly soFar: number;
}

export const isSoFar = (message: unknown): message is SoFar =>
  typeof message === "object" && message !== null && "soFar" in message;

/** One pair of hands: takes a message, answers each with one message, and can be sent home. */
export interface Hand {
  post(message: unknown): void;
  /** Called before the first message; who is called later listens instead. */
  listen(answered: (answer: unknown) => void, broke: (why: Error) => void): void;
  dismiss(): Promise<unknown>;
}

export interface Shift<Result> {
  /** What every hand is told first; it answers with anything. */
  readonly start: unknown;
  readonly workers: number;
  readonly signal?: AbortSignal | undefined;
  readonly done?: ((result: Result, task: number) => void) | undefined;
}

/**
 * Hands out the tasks one by one, as hands get free; the results stand in the order of the tasks, whoever did them. Rejects
 * with the signal's reason when called off, or with what went wrong first; either way, and at the end, every hand has gone
 * home before it settles.
 */
export async function handOut<Result>(
  tasks: readonly unknown[],
  hire: () => Hand,
  { start, workers, signal, done }: Shift<Result>,
): Promise<Result[]> {
  signal?.throwIfAborted();
  const results: Result[] = new Array<Result>(tasks.length);
  const hands: Hand[] = [];
  let next = 0;
  let left = tasks.length;
  let callOff = () => {};
  try {
    await new Promise<void>((resolve, reject) => {
      callOff = () => reject(signal!.reason as Error);
      signal?.addEventListener("abort", callOff, { once: true });
      if (left === 0) resolve();
      for (let i = 0; i < Math.min(workers, tasks.length); i++) {
        const hand = hire();
        hands.push(hand);
        let task = -1; // what it was told first
        const goOn = () => {
          if (next >= tasks.length) return;
          task = next++;
          hand.post(tasks[task]);
        };
        hand.listen((answer) => {
          if (signal?.aborted === true) return;
          if (task >= 0) {
            results[task] = answer as Result;
            left--;
            try {
              done?.(results[task]!, task);
            } catch (error) {
              reject(error as Error);
              return;
            }
          }
          if (left === 0) resolve();
          else goOn();
        }, reject);
        hand.post(start);
      }
    });
  } finally {
    signal?.removeEventListener("abort", callOff);
    await Promise.all(hands.map((hand) => hand.dismiss()));
  }
  return results;
}

/** Why hands that were sent home answer nothing. */
export const GONE = "These hands were sent home.";

/** Hands that work in the program's own time, a message at a turn, so that it hears of a call-off between two. */
export function ownHands(answer: (message: unknown, tell: (share: number) => void) => unknown): Hand {
  let gone = false;
  let answered: (answer: unknown) => void = () => {};
  let broke: (why: Error) => void = () => {};
  return {
    listen(onAnswer, onBreak) {
      [answered, broke] = [onAnswer, onBreak];
    },
    post(message) {
      if (gone) {
        broke(new Error(GONE));
        return;
      }
      setTimeout(() => {
        if (gone) return;
        try {
          answered(answer(message, (soFar) => answered({ soFar } satisfies SoFar)));
        } catch (error) {
          broke(error as Error);
        }
      }, 0);
    },
    dismiss() {
      gone = true;
      return Promise.resolve();
    },
  };
}

/** Hands made of a browser's worker that runs worker.ts. */
export function webHands(worker: Worker): Hand {
  let gone = false;
  let broke: (why: Error) => void = () => {};
  return {
    listen(answered, onBreak) {
      broke = onBreak;
      worker.onmessage = ({ data }: MessageEvent<unknown>) => answered(data);
      worker.onerror = ({ message }) => broke(new Error(message || "the worker could not start"));
    },
    post(message) {
      if (gone) broke(new Error(GONE));
      else worker.postMessage(message);
    },
    dismiss() {
      gone = true;
      return Promise.resolve(worker.terminate());
    },
  };
}
