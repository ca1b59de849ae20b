import { costOfDuty } from "./bench/duty.ts";
console.log(costOfDuty());
