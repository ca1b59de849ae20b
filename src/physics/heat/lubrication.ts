import { finite, notNegative, positive, type Range } from "../../errors.ts";

/** Cooling of the open plate surface: what air alone does, what full lubrication does, and the flow that gives it. */
export interface Lubrication {
  /** Coefficient without flow [W/(m² K)]; 10 to 50 for oily air (recalled). */
  readonly airCoefficient: number;
  /** Coefficient at full flow [W/(m² K)]; 100 to 2000 are used in wet-clutch models (recalled, uncertain). */
  readonly fullCoefficient: number;
  /** Lubrication flow [m³/s] at which it is reached. */
  readonly fullFlow: number;
}

/** The square root is assumed; published tests only show that flow governs. */
export const filmRange: Range = {
  law: "oil-side coefficient of a clutch against lubrication flow",
  quantity: "flow / full flow",
  unit: "1",
  low: 0,
  high: 1,
  source:
    "assumed square root; Tribology in Industry 44(3), 2022, p. 394 shows that oil flow governs, without a law",
};

/** Coefficient [W/(m² K)] at a lubrication flow [m³/s]: the air value at none, rising as the root of the flow to its full value. */
export function filmCoefficient(lubeFlow: number, lubrication: Lubrication): number {
  const { airCoefficient, fullCoefficient, fullFlow } = lubrication;
  const share = Math.sqrt(Math.min(1, Math.max(0, lubeFlow / fullFlow)));
  const film = airCoefficient + (fullCoefficient - airCoefficient) * share;
  if (!(film >= 0 && film < Infinity && fullFlow > 0 && airCoefficient >= 0))
    refuseFilm(lubrication, lubeFlow);
  return film;
}

/** Heat that a flow [m³/s] of fluid can carry off [W] in warming by `rise` [K]. */
export function flowCarries(flow: number, volumetricHeat: number, rise: number): number {
  finite("flow", flow, "m³/s");
  positive("volumetricHeat", volumetricHeat, "J/(m³ K)");
  finite("rise", rise, "K");
  return Math.max(0, flow) * volumetricHeat * Math.max(0, rise);
}

/** Conductance [W/K] of a film, capped by what the flow could carry if it left at plate temperature: G = C(1 − exp(−hA/C)). */
export function capByFlow(filmConductance: number, flowCapacity: number, airConductance: number): number {
  if (!(filmConductance >= 0 && filmConductance < Infinity && flowCapacity < Infinity && airConductance >= 0))
    refuseCap(filmConductance, flowCapacity, airConductance);
  const oil = Math.max(0, filmConductance - airConductance);
  // A flow that comes cold and leaves at the plate's temperature at most.
  const carried = flowCapacity > 0 ? -flowCapacity * Math.expm1(-oil / flowCapacity) : 0;
  return airConductance + carried;
}

/** Laminar, fully developed flow in a groove [W/(m² K)]: h = Nu k/D. Nu 3.66 round, 7.54 wide slot, 8.24 at constant flux. */
export function grooveCoefficient(nusselt: number, conductivity: number, hydraulicDiameter: number): number {
  positive("nusselt", nusselt);
  positive("conductivity", conductivity, "W/(m K)");
  positive("hydraulicDiameter", hydraulicDiameter, "m");
  return (nusselt * conductivity) / hydraulicDiameter;
}

function refuseFilm({ airCoefficient, fullCoefficient, fullFlow }: Lubrication, lubeFlow: number): void {
  notNegative("airCoefficient", airCoefficient, "W/(m² K)");
  notNegative("fullCoefficient", fullCoefficient, "W/(m² K)");
  positive("fullFlow", fullFlow, "m³/s");
  finite("lubeFlow", lubeFlow, "m³/s");
}

function refuseCap(filmConductance: number, flowCapacity: number, airConductance: number): void {
  notNegative("filmConductance", filmConductance, "W/K");
  finite("flowCapacity", flowCapacity, "W/K");
  notNegative("airConductance", airConductance, "W/K");
}
