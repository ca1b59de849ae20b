// Inside a thread or a browser's worker: answers each message. A page hires it with
// `new Worker(new URL("…/ensemble/worker.js", import.meta.url), { type: "module" })`.

import { ownPort } from "../hands/threads.ts";
import { workbench } from "./workbench.ts";

const port = ownPort();
const answer = workbench();
port.onmessage = ({ data }) => port.postMessage(answer(data));
