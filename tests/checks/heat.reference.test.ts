import { runChecks } from "./run-checks.ts";
import { checks } from "./heat.ts";

runChecks(checks);
