import { runChecks } from "./run-checks.ts";
import { checks } from "./several-links-driven.ts";

runChecks(checks);
