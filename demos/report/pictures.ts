// The pictures of a history, drawn without a browser.

import type { CloseUp } from "../../src/history/record.ts";
import type { History } from "../../src/history/simulate.ts";
import type { Case } from "../../src/inputs/case.ts";
import { engineTorque } from "../../src/physics/load/engine.ts";
import { frictionCoefficient } from "../../src/physics/clutch/friction.ts";
import { bayLadder } from "../../src/plots/bay-ladder.ts";
import { closeUpStrip } from "../../src/plots/close-up-strip.ts";
import { clutchStates } from "../../src/plots/clutch-states.ts";
import { wordsFor } from "../../src/plots/event-words.ts";
import { fadeTime } from "../../src/plots/fade-time.ts";
import { historyStrip } from "../../src/plots/history-strip.ts";
import type { Picture } from "../../src/plots/picture.ts";
import { slipHeatAgainstPressure, type SlipHeatPicture } from "../../src/plots/slip-heat.ts";
import { heats, places } from "../fade-marks.ts";
import type { Computed } from "./compute.ts";
import { drawn } from "./drawn.ts";
import type { Drawing } from "./frame.ts";
import { alone, inBoth, type Said } from "./said.ts";

export function drawings(given: Case, computed: Computed): Drawing[] {
  const { history } = computed;
  const drawing = (
    name: string,
    title: string,
    says: Said,
    draw: (picture: Picture) => SVGSVGElement,
  ): Drawing => ({
    name,
    title,
    says,
    draw: drawn(draw),
  });
  const strip = { history, ...marksOf(given) };
  const from = lastPart(history);
  return [
    drawing("history", "The whole history", "One point a trip, from the first day to the last.", (picture) =>
      historyStrip(strip, picture),
    ),
    ...(from > 0
      ? [
          drawing("last-part", "The last part", "The same from shortly before the first air.", (picture) =>
            historyStrip({ ...strip, from }, picture),
          ),
        ]
      : []),
    ...history.closeUps.map((closeUp, i) =>
      drawing(
        `close-up-${i + 1}`,
        `Close up: ${wordsFor({ name: closeUp.about })}`,
        "Five looks a second around that moment, as far as the engine ran.",
        (picture) =>
          closeUpStrip(
            { closeUp, events: history.events, moment: momentOf(history, closeUp.about) },
            picture,
          ),
      ),
    ),
    drawing(
      "fade",
      "The time over which the pressure goes",
      inBoth(
        (system) =>
          `Held at ${alone(system)(computed.cruise.speed, "speed")}, uphill one in twenty, gear ${computed.cruise.gear + 1}: at the ` +
          "left end no pressure is no harm; a real leak stands at the right end, and gulps in between burn as surely.",
      ),
      (picture) =>
        fadeTime(
          {
            rows: computed.fades,
            places,
            heats: heats(given.unit.build, computed.cruise.gear, picture.system),
          },
          picture,
        ),
    ),
    drawing(
      "clutch-states",
      "Neither on nor off",
      "Heat needs slip and torque at once. Only a clutch that is half applied has both.",
      clutchStates,
    ),
    drawing(
      "slip-heat",
      "How much heat, by apply pressure",
      `The ${mostBurnt(given, history).name} between an engine and an output held at a speed.`,
      (picture) => slipHeatAgainstPressure(benchOf(given, history), picture),
    ),
    drawing(
      "bay-ladder",
      "Each test of the bay",
      "By the fluid that is missing; the band of a sound unit is shaded; crosses lie outside it, or were not reached at all.",
      (picture) => bayLadder(computed.cards, picture),
    ),
  ];
}

export function marksOf({ unit, start }: Case) {
  const { sump, shiftControl } = unit.build;
  return {
    low: sump.stick.low,
    full: sump.stick.full,
    trimLimit: shiftControl.trimLimit,
    odometer: start.odometer,
  };
}

/** Where the last part begins [s of running]: a fortieth of the whole before the first air; 0 when that is hardly later. */
function lastPart({ events, end }: History): number {
  const air = events.find(({ name }) => name === "first gulp of air");
  if (air === undefined) return 0;
  const from = air.running - end.running / 40;
  return from > 0.3 * end.running ? from : 0;
}

const momentOf = ({ events }: History, about: CloseUp["about"]): number =>
  events.find(({ name }) => name === about)?.clock ?? 0;

function mostBurnt({ unit }: Case, { clutches }: History) {
  const own = unit.build.clutches;
  let worst = 0;
  for (let i = 1; i < own.length; i++) if (clutches[i]!.damage > clutches[worst]!.damage) worst = i;
  return own[worst]!;
}

/** That clutch on a bench: half of full torque at 0.3 of rated speed, sliding warm at 5 m/s, both engine lines up to rated speed. */
function benchOf(given: Case, history: History): SlipHeatPicture {
  const clutch = mostBurnt(given, history);
  const { engine } = given.unit.build;
  const outputSpeed = 0.3 * engine.ratedSpeed;
  return {
    clutch,
    friction: frictionCoefficient(clutch.friction, 5, 363.15),
    torque: engineTorque(engine, outputSpeed, 0.7),
    outputSpeed,
    freeSpeed: engine.ratedSpeed,
  };
}
