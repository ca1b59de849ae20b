// The invented builds with their fluid, tight.
import { readCaseFile } from "../../src/inputs/files.ts";
import type { Unit } from "../../src/physics/build.ts";
import { caseFile } from "../inputs/shipped.ts";

const tight = (name: string): Unit => ({ ...readCaseFile(caseFile(name)).unit, leak: null });

export const van = tight("slow-seep");
export const taxi = tight("taxi-shaft-seal");
export const builds = [van, taxi];
