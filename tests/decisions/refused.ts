// Whether something is refused with a code, as every impossible input is.
import { isCoded } from "../../src/errors.ts";

export function refused(work: () => unknown): boolean {
  try {
    work();
  } catch (error) {
    return isCoded(error) && error.code === "impossible-input";
  }
  return false;
}
