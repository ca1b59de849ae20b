import { runChecks } from "./run-checks.ts";
import { checks } from "./clutch.ts";

runChecks(checks);
