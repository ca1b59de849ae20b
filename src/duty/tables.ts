// The tables of a prepared week laid side by side, air next to air, so that a reading between levels and airs runs through memory once.

import { circuitPlaces, shapes, type Climate, type Prepared } from "./prepared.ts";

/** One number by row (level and place within it) and air. */
export type Side = Float64Array;

/** What a stand is asked for, one after another by row and air: depth in the pan [m], density [kg/m³], viscosity at its end [Pa s], ∫dt/µ [1/Pa], depth at its end [m]. */
export const standParts = 5;

export interface Tables {
  /** Air of each climate [K], rising, and how many levels it has. */
  readonly airs: Float64Array;
  readonly levels: Int32Array;
  /** By place of the circuit: pressure of a seep by level; what a week and each piece of a trip lose by row, shape and air. */
  readonly circuit: readonly { readonly pressure: Side; readonly week: Side; readonly trips: Side }[];
  readonly panDepth: Side;
  readonly panDensity: Side;
  readonly panViscosity: Side;
  readonly stands: Side;
  readonly ageing: Side;
}

const known = new WeakMap<Prepared, Tables>();

/** The tables of a prepared week, laid out when first asked for. A climate that ends before the others goes on as its last level. */
export function tablesOf(prepared: Prepared): Tables {
  let tables = known.get(prepared);
  if (tables === undefined) known.set(prepared, (tables = laidOut(prepared)));
  return tables;
}

function laidOut({ climates, kinds, standKinds, firstPiece }: Prepared): Tables {
  const rows = Math.max(...climates.map(({ levels }) => levels));
  const cells = firstPiece[kinds.length]!;
  const side = (table: (climate: Climate) => readonly Float64Array[], width: number): Side => {
    const parts = table(climates[0]!).length;
    const out = new Float64Array(rows * width * climates.length * parts);
    climates.forEach((climate, c) => {
      const values = table(climate);
      for (let level = 0; level < rows; level++)
        for (let at = 0; at < width; at++) {
          const from = Math.min(level, climate.levels - 1) * width + at;
          const to = ((level * width + at) * climates.length + c) * parts;
          for (let p = 0; p < parts; p++) out[to + p] = values[p]![from]!;
        }
    });
    return out;
  };
  return {
    airs: Float64Array.from(climates, ({ air }) => air),
    levels: Int32Array.from(climates, ({ levels }) => levels),
    circuit: circuitPlaces.map((_, place) => ({
      pressure: side(({ circuit }) => [circuit[place]!.pressure], 1),
      // Shape by shape is place by place within a row.
      week: side(({ circuit }) => [circuit[place]!.week], shapes.length),
      trips: side(({ circuit }) => [circuit[place]!.trips], cells * shapes.length),
    })),
    panDepth: side(({ panDepth }) => [panDepth], cells),
    panDensity: side(({ panDensity }) => [panDensity], cells),
    panViscosity: side(({ panViscosity }) => [panViscosity], cells),
    stands: side(
      ({ stands: { depth, density, viscosity, fluidity, rest } }) => [
        depth,
        density,
        viscosity,
        fluidity,
        rest,
      ],
      standKinds.length,
    ),
    ageing: side(({ ageing }) => [ageing], 1),
  };
}
