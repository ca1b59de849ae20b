// The driving: schedules from the standards, invented rounds, own traces, and the week that they make.

export * from "../driving/mend.ts";
export * from "../driving/nedc.ts";
export * from "../driving/parcel-round.ts";
export * from "../driving/pattern.ts";
export type { RoundOptions } from "../driving/road-draws.ts";
export * from "../driving/statistics.ts";
export * from "../driving/taxi-shift.ts";
export * from "../driving/ticks.ts";
export * from "../driving/trace-from.ts";
export * from "../driving/trace.ts";
export { readTrace, traceFromCsv, type ColumnUnits, type CsvOptions, type ReadTrace } from "../inputs/csv.ts";
