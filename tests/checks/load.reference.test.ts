import { checks } from "./load.ts";
import { runChecks } from "./run-checks.ts";

runChecks(checks);
