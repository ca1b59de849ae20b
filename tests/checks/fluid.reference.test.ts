import { runChecks } from "./run-checks.ts";
import { checks } from "./fluid.ts";

runChecks(checks);
