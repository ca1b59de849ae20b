import { runChecks } from "./run-checks.ts";
import { checks } from "./more-points.ts";

runChecks(checks);
