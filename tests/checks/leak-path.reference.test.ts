import { runChecks } from "./run-checks.ts";
import { checks } from "./leak-path.ts";

runChecks(checks);
