import { runChecks } from "./run-checks.ts";
import { checks } from "./damage.ts";

runChecks(checks);
