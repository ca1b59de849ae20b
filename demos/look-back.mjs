// `npm run lookback`: what a visit to the bay says of when the leak opened, and whether it was the leak.
import { start } from "./called-off.mjs";

await start(async () => (await import("./look-back/run.ts")).run);
