// The thread that prepares a week: TypeScript has to be announced to it anew.
import { register } from "tsx/esm/api";

register();
await import("./prepare-worker.ts");
