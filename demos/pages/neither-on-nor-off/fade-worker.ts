import { expose } from "comlink";
import type { FadeRow } from "../../../src/history/fade.ts";
import type { Works } from "../parts/job.ts";
import { fades } from "./fades.ts";

const works: Works<null, FadeRow[]> = { run: () => fades() };

expose(works);
