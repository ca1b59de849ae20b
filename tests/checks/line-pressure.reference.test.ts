import { runChecks } from "./run-checks.ts";
import { checks } from "./line-pressure.ts";

runChecks(checks);
