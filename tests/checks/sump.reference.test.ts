import { runChecks } from "./run-checks.ts";
import { checks } from "./sump.ts";

runChecks(checks);
