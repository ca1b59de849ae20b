import { runChecks } from "./run-checks.ts";
import { checks } from "./hiding-places.ts";

runChecks(checks);
