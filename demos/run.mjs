// `npm run demo`: runs a case from full to its end, prints what happened, and writes the report to a folder.
import { start } from "./called-off.mjs";

await start(async () => (await import("./report/demo.ts")).demo);
