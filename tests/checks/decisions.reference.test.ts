import { runChecks } from "./run-checks.ts";
import { checks } from "./decisions.ts";

runChecks(checks);
