import { runChecks } from "./run-checks.ts";
import { checks } from "./supply.ts";

runChecks(checks);
