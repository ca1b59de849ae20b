// A driving schedule: what the road and the traffic ask of the vehicle, second by second or by breakpoints.

/** Times strictly rise; all columns have one length, two or more. SI. */
export interface Trace {
  readonly name: string;
  /** [s] */
  readonly time: Float64Array;
  /** Vehicle speed [m/s], straight lines between the times. */
  readonly speed: Float64Array;
  /** Rise over run [-], uphill positive; entry i holds from time i to time i + 1. */
  readonly grade: Float64Array;
  /** Lateral acceleration felt along the floor [m/s2], positive in a turn to the left; held as the grade is. */
  readonly lateral: Float64Array;
}

/** A trace cut into ticks; entry i of each column is tick i. */
export interface Ticks {
  readonly count: number;
  /** Length of the tick [s]. */
  readonly dt: Float64Array;
  /** Speed wanted at the end of the tick [m/s]. */
  readonly speed: Float64Array;
  readonly grade: Float64Array;
  readonly lateral: Float64Array;
}
