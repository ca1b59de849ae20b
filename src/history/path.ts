// The path of the surface over the pickup's mouth in a step near air.

/** Most samples of a step; an even number. */
export const MOST = 64;

/**
 * What the flow makes of a step: the depths that it sets at its beginning [m], and by how much these grow in a sample; of what was in the
 * passage the share that a sample leaves, and of the draw's change the share that has not arrived at its end.
 */
export interface Draw {
  weir: number;
  cover: number;
  weirGrows: number;
  coverGrows: number;
  stays: number;
  lags: number;
}

/** The surface's path over the next step near air, by the ends of its samples, the first of them the step's beginning. */
export interface Path {
  /** Samples, an even number; 0 when no path is followed. How long each lasts [s]. */
  samples: number;
  lasts: number;
  /** When the step begins [s]: a path is that of one step. */
  began: number;
  /** Gas in the suction passage at the end of the step, once the instant in its middle is known; NaN before. */
  end: number;
  /** How fast the level rose at the mouth in the last step that was followed [m/s]; what was drawn in its middle [m³/s], how long it took [s], and how fast that grew [m³/s²]. */
  rises: number;
  drew: number;
  took: number;
  draws: number;
  readonly draw: Draw;
  /** The slopes about which the surface swings. */
  along: number;
  across: number;
  /** By sample: slopes and their rates (four numbers), how deep the surface stands over the mouth [m] at the level of the beginning, and the gas in the suction passage as it was foreseen. */
  readonly slopes: Float64Array;
  readonly over: Float64Array;
  readonly gas: Float64Array;
}

export const newPath = (): Path => ({
  samples: 0,
  lasts: 0,
  began: Number.NaN,
  end: Number.NaN,
  rises: 0,
  drew: 0,
  took: 0,
  draws: 0,
  draw: { weir: 0, cover: 0, weirGrows: 0, coverGrows: 0, stays: 1, lags: 1 },
  along: 0,
  across: 0,
  slopes: new Float64Array(4 * (MOST + 1)),
  over: new Float64Array(MOST + 1),
  gas: new Float64Array(MOST + 1),
});

/** What went before is over: no path is followed, and the next one begins without knowing how level and flow went. */
export function forgetPath(path: Path): void {
  path.samples = 0;
  path.rises = 0;
  path.took = 0;
  path.draws = 0;
}
