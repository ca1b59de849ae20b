// What pan, pickup, stick, overflow and fill must be to each other.

import { panCapacity } from "../physics/sump/pan.ts";
import { told, type Rule } from "./build-rule.ts";

export const sumpRules: readonly Rule[] = [
  {
    needs: ["sump"],
    check({ sump: { pan, pickup, stick, overflow } }, { want }) {
      want(
        !(pickup.height >= pan.height),
        "sump.pickup.height",
        `a mouth below the top of the pan (${told.length(pan.height)})`,
        told.length(pickup.height),
        '"8 mm"',
      );
      for (const [name, place] of Object.entries({ pickup, stick, overflow })) {
        want(
          !(place.x > pan.length),
          `sump.${name}.x`,
          `a place in the pan (${told.length(pan.length)} long)`,
          told.length(place.x),
          '"190 mm"',
        );
        want(
          !(place.y > pan.width),
          `sump.${name}.y`,
          `a place in the pan (${told.length(pan.width)} wide)`,
          told.length(place.y),
          '"160 mm"',
        );
      }
      want(
        !(pickup.weirGas < pickup.baseGas),
        "sump.pickup.weirGas",
        "no less gas than baseGas",
        String(pickup.weirGas),
        "0.05",
      );
      want(
        !(stick.low >= stick.full),
        "sump.stick.low",
        `a low mark below the full mark (${told.length(stick.full)})`,
        told.length(stick.low),
        '"50 mm"',
      );
      want(
        !(stick.full > pan.height),
        "sump.stick.full",
        `a full mark in the pan (${told.length(pan.height)} high)`,
        told.length(stick.full),
        '"55 mm"',
      );
      want(
        !(overflow.height > pan.height),
        "sump.overflow.height",
        `an overflow in the pan (${told.length(pan.height)} high)`,
        told.length(overflow.height),
        '"50 mm"',
      );
    },
  },
  {
    needs: ["holdUp", "fill", "sump"],
    check({ fill, holdUp, sump: { pan } }, { want }) {
      const away = holdUp.converter + holdUp.coolerAndLines + holdUp.passages;
      want(
        !(away >= fill),
        "holdUp",
        `converter, lines and passages together to hold less than the fill (${told.volume(fill)})`,
        told.volume(away),
      );
      if (Object.values(pan).some(Number.isNaN)) return; // told where it stands
      const room = panCapacity(pan) + away;
      want(
        !(fill > room),
        "fill",
        `no more than the pan and the hold-ups take (${told.volume(room)})`,
        told.volume(fill),
        '"11 L"',
      );
    },
  },
];
