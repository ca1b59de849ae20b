// Laws used outside the range in which they were established: what that means for the answer, and how far it went.

import { fillOrificeRange } from "../../src/physics/clutch/fill.ts";
import { frictionRange } from "../../src/physics/clutch/friction.ts";
import { liningPressureRange } from "../../src/physics/clutch/capacity.ts";
import { glazeRange } from "../../src/physics/damage/glaze.ts";
import { pyrolysisRange } from "../../src/physics/damage/pyrolysis.ts";
import { fluidAgeingRange } from "../../src/physics/fluid/ageing.ts";
import { densityRange } from "../../src/physics/fluid/density.ts";
import { specificHeatRange } from "../../src/physics/fluid/specific-heat.ts";
import { viscosityRange, viscosityTemperatureRange } from "../../src/physics/fluid/viscosity.ts";
import { annulusRange } from "../../src/physics/leak/annulus.ts";
import { crackGapRange } from "../../src/physics/leak/crack.ts";
import { holeRange } from "../../src/physics/leak/hole.ts";
import { pitRange } from "../../src/physics/leak/pits.ts";
import { partitionRange } from "../../src/physics/heat/partition.ts";
import { roadForceRange } from "../../src/physics/load/road.ts";
import { inletFrictionRange } from "../../src/physics/supply/inlet.ts";
import { slipRange } from "../../src/physics/supply/pump.ts";
import { circuitOrificeRange } from "../../src/physics/supply/regulator.ts";
import { airOnsetRange } from "../../src/physics/sump/pickup.ts";
import { aeratedRange } from "../../src/physics/fluid/aerated.ts";
import { effectivenessRange } from "../../src/physics/heat/cooler.ts";
import { lumpedRange } from "../../src/physics/heat/plate.ts";
import { lockupPressureRange } from "../../src/physics/clutch/lockup.ts";
import { fullTorqueRange } from "../../src/physics/load/engine.ts";
import { converterRange } from "../../src/physics/load/converter.ts";
import { radiusRange } from "../../src/physics/clutch/geometry.ts";
import { learnedFillRange } from "../../src/physics/clutch/learned-fill.ts";
import { glazeLossRange } from "../../src/physics/damage/damage-index.ts";
import { wearRange } from "../../src/physics/damage/wear.ts";
import { interfaceRange } from "../../src/physics/heat/interface.ts";
import type { UnitSystem } from "../../src/units/show.ts";
import { alone } from "./said.ts";

const meanings: Readonly<Record<string, string>> = {
  [viscosityTemperatureRange.law]:
    "The fluid was colder or hotter than its viscosity line is drawn for: leak, return and fill times at such moments are rough.",
  [viscosityRange.law]:
    "The fluid was thinner or thicker than its viscosity line is drawn for: leak, return and fill times at such moments are rough.",
  [densityRange.law]:
    "The fluid was colder or hotter than its density table: levels at such moments are a little rough.",
  [specificHeatRange.law]:
    "The fluid was colder or hotter than its heat capacity is known for: how fast it warms at such moments is a little rough.",
  [fluidAgeingRange.law]:
    "The fluid was hotter than the table of fluid life goes: it ages faster than the table, by how much is not known.",
  [pyrolysisRange.law]:
    "The steel beside a lining was hotter than charring was measured: the lining is burnt either way, but the second at which it burnt is rough.",
  [glazeRange.law]:
    "The steel beside a lining was hotter than glazing was measured: while it slips that hard, charring decides, and the share that is called glazed is rough.",
  [frictionRange.law]:
    "A clutch slid faster than paper friction was measured: how hard it still pulled then is rough. It was slipping either way.",
  [partitionRange.law]:
    "A slip lasted longer than the moment in which steel and lining share the heat by their material alone: the plate's temperature in a long slip is rough. It grew hot either way.",
  [fillOrificeRange.law]:
    "Fluid was so thick, or pressure so low, that a clutch filled more slowly than the law of its feed hole says: slow engagements in the cold may have been slower still.",
  [inletFrictionRange.law]:
    "The suction passage flowed between smooth and turbulent, where its loss is least certain: the start of the pump's starving may shift a little.",
  [circuitOrificeRange.law]:
    "Fluid was so thick that it crept through the holes of the clutch circuit: how much of the pump's flow they took in the cold is rough.",
  [slipRange.law]:
    "More leaked back inside the pump than its law was made for: the line pressure at such moments is rough.",
  [roadForceRange.law]:
    "The vehicle was faster than its rolling resistance was measured: the load then was higher.",
  [liningPressureRange.law]:
    "The apply pressure pressed a lining harder than paper linings are meant for: its friction at such moments may be lower than was reckoned.",
  [holeRange.law]:
    "The hole was far longer than it is wide: what runs through it while it is so fine is rough. It is little.",
  [annulusRange.law]:
    "The gap of the seal was no longer small beside its diameter: what ran through it then is a little rough.",
  [crackGapRange.law]:
    "The crack was longer than the law of its gape was made for: what it lost shortly before the line parted is rough.",
  [airOnsetRange.law]:
    "The dip over the pickup was small beside its mouth, or far larger: the level at which it draws its first air is rough. A wide mouth draws it later than was reckoned.",
  [aeratedRange.law]:
    "So much air was in the fluid at the pump that it was foam, which flows otherwise than fluid with bubbles: pressures at such moments are rough. They were poor either way.",
  [effectivenessRange.law]:
    "Little flowed through the cooler: it left as cool as the coolant. How cool to the last degree is not known; it carried little heat.",
  [lumpedRange.law]:
    "A steel plate was cooled so fast that it was not of one temperature: its surface at such moments is rough.",
  [lockupPressureRange.law]:
    "The converter clutch was pressed harder than such clutches are: what it held then is rough.",
  [fullTorqueRange.law]:
    "The engine was faster than its full-load curve goes: there its limiter was taken to close it.",
  [converterRange.law]:
    "The turbine was faster than the engine: what the converter drags along the other way is not computed.",
  [radiusRange.law]:
    "A clutch's ring is so wide that plates bend: the radius at which it pulls is rough, and with it what it holds.",
  [interfaceRange.law]:
    "A steel plate is thick beside the width of its ring: how far its surface runs ahead in a slip is rough.",
  [glazeLossRange.law]:
    "A glazed lining was taken to lose more or less of its friction than is held likely: what it holds when old is rough.",
  [wearRange.law]:
    "Linings were taken to wear more or less by the heat of a slip than any that was measured: grams and millimetres lost are rough.",
  [learnedFillRange.law]:
    "The controller was let begin a clutch's fill earlier than any is held to: how long that hid a slow fill is rough.",
  [pitRange.law]: "The pit had rusted for longer than rust was followed: how wide it was by then is rough.",
};

/** For a law that has no sentence of its own. */
const UNKNOWN = "How far that moves the answer is not known.";

/** What it means for the answer that a law was used outside its range. */
export const meaningOf = (law: string): string => meanings[law] ?? UNKNOWN;

const line =
  /^(.*) used at (.*) = (-?[\d.]+(?:e[+-]?\d+)?)(.*?) \(holds from (-?[\d.]+(?:e[+-]?\d+)?) to (-?[\d.]+(?:e[+-]?\d+)?)(.*)\)$/;

/** One sentence of the history about a law that was stretched, with what it means and in the reader's units. */
export function stretchedText(outside: string, system: UnitSystem): string {
  const parts = line.exec(outside);
  if (parts === null) return `${outside}. ${UNKNOWN}`;
  const [, law, quantity, at, unit, low, high] = parts;
  const tell = (text: string) => inUnit(Number(text), unit!.trim(), quantity!, system);
  return `${meaningOf(law!)} (${law}: ${quantity} ${tell(at!)}, good from ${tell(low!)} to ${tell(high!)}.)`;
}

function inUnit(value: number, unit: string, quantity: string, system: UnitSystem): string {
  const three = (number: number) =>
    Number(number.toPrecision(3)).toLocaleString("en-US", { maximumSignificantDigits: 3 });
  if (unit === "K") return alone(system)(value, "temperature");
  if (unit === "Pa") return alone(system)(value, "pressure");
  if (unit === "m/s" && quantity.startsWith("vehicle")) return alone(system)(value, "speed");
  if (unit === "m/s" && system === "US") return `${three(value / 0.3048)} ft/s`;
  if (unit === "m²/s" || unit === "m2/s") return alone(system)(value, "kinematicViscosity");
  return `${three(value)}${unit === "" ? "" : ` ${unit}`}`;
}

/** All of them, or that there are none. */
export function stretched(outside: readonly string[], system: UnitSystem): string[] {
  if (outside.length === 0) return ["No watched law was used outside its range."];
  return [
    "At some moments a law was used outside the range in which it was established. Each is told here with what it means; dates before such moments do not hang on it.",
    ...outside.map((text) => stretchedText(text, system)),
  ];
}
