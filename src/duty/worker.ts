// Inside a thread or a browser's worker: answers each message, and tells on the way how far it is. A page hires it with
// `new Worker(new URL("…/duty/worker.js", import.meta.url), { type: "module" })`.

import type { SoFar } from "../hands/hands.ts";
import { ownPort } from "../hands/threads.ts";
import { workbench } from "./workbench.ts";

const port = ownPort();
const answer = workbench();
const tell = (soFar: number) => port.postMessage({ soFar } satisfies SoFar);
port.onmessage = ({ data }) => port.postMessage(answer(data, tell));
