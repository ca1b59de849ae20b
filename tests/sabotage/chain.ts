import { type Mutation } from "./mutation.ts";
export const chainMutations: readonly Mutation[] = [];
