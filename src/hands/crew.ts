// A crew: hands that stay for question after question, each told once what it is all about.

import { isSoFar, type Hand } from "./hands.ts";

export interface Crew {
  /**
   * The answer to a task, by whoever is free first; `told` hears the share of it that is done, if the hands tell. Rejects with what went wrong; then the
   * crew is of no more use.
   */
  readonly ask: <Answer>(task: unknown, told?: (share: number) => void) => Promise<Answer>;
  /** Resolves once every hand has answered what it was told first; rejects as `ask` does. */
  readonly begun: Promise<unknown>;
  /** Sends everybody home; what was still asked is never answered. */
  readonly dismiss: () => Promise<unknown>;
}

interface Asked {
  readonly task: unknown;
  readonly told: ((share: number) => void) | undefined;
  readonly resolve: (answer: never) => void;
  readonly reject: (why: Error) => void;
}

/** A crew of hands that were hired; tells each of them first what `start` says, to which it answers with anything. */
export function crewOf(hands: readonly Hand[], start: (hand: Hand) => unknown): Crew {
  const waiting: Asked[] = [];
  let broken: Error | undefined;
  const doing = new Map<Hand, Asked>();
  const free: Hand[] = [];
  const goOn = () => {
    while (free.length > 0 && waiting.length > 0) {
      const [hand, asked] = [free.pop()!, waiting.shift()!];
      doing.set(hand, asked);
      hand.post(asked.task);
    }
  };
  const begins = (hand: Hand) =>
    new Promise<void>((resolve, reject) => {
      doing.set(hand, { task: undefined, told: undefined, resolve, reject });
    });
  const begun = Promise.all(hands.map(begins));
  begun.catch(() => {}); // told to whoever asks for something, too
  for (const hand of hands) {
    hand.listen(
      (answer) => {
        if (isSoFar(answer)) {
          doing.get(hand)?.told?.(answer.soFar);
          return;
        }
        doing.get(hand)?.resolve(answer as never);
        doing.delete(hand);
        free.push(hand);
        goOn();
      },
      (why) => {
        broken ??= why;
        for (const { reject } of [...doing.values(), ...waiting.splice(0)]) reject(broken);
        doing.clear();
      },
    );
    hand.post(start(hand));
  }
  return {
    ask: (task, told) =>
      new Promise((resolve, reject) => {
        if (broken !== undefined) reject(broken);
        else {
          waiting.push({ task, told, resolve, reject });
          goOn();
        }
      }),
    begun,
    dismiss: () => Promise.all(hands.map((hand) => hand.dismiss())),
  };
}
