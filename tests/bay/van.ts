// The invented parcel van with its fluid, tight.
import { fileURLToPath } from "node:url";
import { readCaseFile } from "../../src/inputs/files.ts";
import type { Unit } from "../../src/physics/build.ts";

const file = fileURLToPath(new URL("../../reference-data/cases/slow-seep.json", import.meta.url));

export const van: Unit = { ...readCaseFile(file).unit, leak: null };
