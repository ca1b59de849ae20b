import { checks } from "./driving.ts";
import { runChecks } from "./run-checks.ts";

runChecks(checks);
