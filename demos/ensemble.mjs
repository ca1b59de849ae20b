// `npm run ensemble`: runs a case over all that its uncertain numbers may be, and tells in which band each event lies.
import { start } from "./called-off.mjs";

await start(async () => (await import("./ensemble/run.ts")).run);
