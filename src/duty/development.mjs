// A thread in development: TypeScript has to be announced to it anew.
import { register } from "tsx/esm/api";

register();
await import("./worker.ts");
