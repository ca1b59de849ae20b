import { runChecks } from "./run-checks.ts";
import { checks } from "./pickup-and-air.ts";

runChecks(checks);
