// The colours and sizes of every picture. Two hues that colour-blind readers tell apart and that differ in lightness,
// so that they survive a photocopy; a third line is told by its dashes and by the words beside it.

/** Text and axes, quiet text, rules; fluid and pressure; heat and harm; what is merely asked for. */
export const ink = {
  text: "#1d2a33",
  soft: "#56646e",
  rule: "#c3cbd0",
  fluid: "#1b5e8a",
  heat: "#b0431a",
  asked: "#6d6048",
  paper: "#ffffff",
} as const;

/** Bands behind a picture: nothing touches, neither on nor off, holds. */
export const band = { released: "#eceff1", partly: "#f8e4d4", fully: "#dfebf3" } as const;

/** Size of the letters [px], and the width that one of them takes on average, since no page is there to measure it. */
export const letters = 13;
export const letterWidth = 0.56 * letters;

/** Width that a text is likely to take [px]. */
export const widthOf = (text: string): number => text.length * letterWidth;
