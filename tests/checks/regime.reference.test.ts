import { runChecks } from "./run-checks.ts";
import { checks } from "./regime.ts";

runChecks(checks);
