import { checks } from "./ensemble.ts";
import { runChecks } from "./run-checks.ts";

runChecks(checks);
