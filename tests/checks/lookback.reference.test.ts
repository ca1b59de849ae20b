import { checks } from "./lookback.ts";
import { runChecks } from "./run-checks.ts";

runChecks(checks);
