import { impossible, type Range } from "../../errors.ts";

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
  if (!(lubrication.fullFlow > 0)) impossible("fullFlow", lubrication.fullFlow, "a flow above 0 m³/s");
  if (Number.isNaN(lubeFlow)) impossible("lubeFlow", lubeFlow, "a flow in m³/s");
  const share = Math.sqrt(Math.min(1, Math.max(0, lubeFlow / lubrication.fullFlow)));
  return lubrication.airCoefficient + (lubrication.fullCoefficient - lubrication.airCoefficient) * share;
}

/** Heat that a flow [m³/s] of fluid can carry off [W] in warming by `rise` [K]. */
export function flowCarries(flow: number, volumetricHeat: number, rise: number): number {
  if (!(volumetricHeat > 0))
    impossible("volumetricHeat", volumetricHeat, "density times specific heat above 0 J/(m³ K)");
  return Math.max(0, flow) * volumetricHeat * Math.max(0, rise);
}

/** Conductance [W/K] of a film, capped by what the flow could carry if it left at plate temperature: G = C(1 − exp(−hA/C)). */
export function capByFlow(filmConductance: number, flowCapacity: number, airConductance: number): number {
  if (!(filmConductance >= 0))
    impossible("filmConductance", filmConductance, "a conductance of 0 W/K or more");
  if (!(airConductance >= 0)) impossible("airConductance", airConductance, "a conductance of 0 W/K or more");
  const oil = Math.max(0, filmConductance - airConductance);
  // A flow that comes cold and leaves at the plate's temperature at most.
  const carried = flowCapacity > 0 ? -flowCapacity * Math.expm1(-oil / flowCapacity) : 0;
  return airConductance + carried;
}

/** Laminar, fully developed flow in a groove [W/(m² K)]: h = Nu k/D. Nu 3.66 round, 7.54 wide slot, 8.24 at constant flux. */
export function grooveCoefficient(nusselt: number, conductivity: number, hydraulicDiameter: number): number {
  if (!(hydraulicDiameter > 0)) impossible("hydraulicDiameter", hydraulicDiameter, "a diameter above 0 m");
  return (nusselt * conductivity) / hydraulicDiameter;
}
