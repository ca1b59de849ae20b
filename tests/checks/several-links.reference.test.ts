import { runChecks } from "./run-checks.ts";
import { checks } from "./several-links.ts";

runChecks(checks);
