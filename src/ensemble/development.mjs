// A thread in development.
import { run } from "../hands/one-file.mjs";

await run(new URL("./worker.ts", import.meta.url));
