import { runChecks } from "./run-checks.ts";
import { checks } from "./growth.ts";

runChecks(checks);
