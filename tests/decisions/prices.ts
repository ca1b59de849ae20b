// Invented prices, to reckon with by hand.
import type { Prices } from "../../src/decisions/renewal.ts";

export const prices: Prices = {
  line: 60,
  "line set": 180,
  "fluid and filter": 110,
  cooler: 240,
  converter: 520,
  clutches: 2400,
  comingBack: 350,
};
