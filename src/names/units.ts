// The door for units: text with its unit in, SI inside, text in the user's units out; and literals for code, such as mm(0.5).

export * from "../units/kinds.ts";
export * from "../units/literals.ts";
export * from "../units/parse.ts";
export * from "../units/read.ts";
export { axis, show, shownKinds, type Axis, type ShownKind, type UnitSystem } from "../units/show.ts";
export * from "../units/system.ts";
