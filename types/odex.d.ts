// What the tests use of odex 2.0.4. The package ships its TypeScript source instead of declarations,
// and that source does not pass this project's compiler options; tsconfig.json points here instead.

export enum Outcome {
  Converged,
  MaxStepsExceeded,
  EarlyReturn,
}

export type Derivative = (x: number, y: number[]) => number[];

// Returning false ends the integration. `dense` is given only when denseOutput is set.
export type OutputFunction = (
  step: number,
  xOld: number,
  x: number,
  y: number[],
  dense?: (component: number, x: number) => number,
) => boolean | void;

export class Solver {
  constructor(n: number);
  maxSteps: number;
  initialStepSize: number;
  maxStepSize: number; // 0: the whole span
  denseOutput: boolean;
  relativeTolerance: number | number[];
  absoluteTolerance: number | number[];
  grid(dt: number, out: (x: number, y: number[]) => boolean | void): OutputFunction;
  solve(
    f: Derivative,
    x: number,
    y: number[],
    xEnd: number,
    out?: OutputFunction,
  ): {
    y: number[];
    outcome: Outcome;
    nStep: number;
    xEnd: number;
    nAccept: number;
    nReject: number;
    nEval: number;
  };
}
