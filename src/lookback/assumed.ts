// Numbers that nobody has published, and why they are taken to be so.

import type { Origin } from "../sources/origin.ts";

export const assumed = (because: string): Origin => ({ kind: "assumed", source: "this project", because });
