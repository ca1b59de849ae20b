// The second fidelity: a week prepared once, then histories by averages within microseconds.

export { prepareDuty, type AirRange, type Preparing } from "../duty/prepare.ts";
export { prepareWeek, type PrepareOptions } from "../duty/prepare-week.ts";
export { dutyHistory, type DutyHistory, type HandedOver } from "../duty/history.ts";
export { toldDates, type ToldDate } from "../duty/told.ts";
export type { DutyEvent } from "../duty/happen.ts";
export type { Aftermath, Candidate, Climate, Prepared, Stands, Threshold } from "../duty/prepared.ts";
