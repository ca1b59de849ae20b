// What clutches and the pressure that holds them must be to each other.

import { told, type Rule } from "./build-rule.ts";

export const clutchRules: readonly Rule[] = [
  {
    needs: ["clutches", "lockUp", "regulator"],
    check({ clutches, lockUp, regulator }, { want }) {
      const rings = [
        ...clutches.map((clutch, i) => ({ path: `clutches[${i}]`, clutch })),
        { path: "lockUp.clutch", clutch: lockUp.clutch },
      ];
      for (const { path, clutch } of rings)
        want(
          !(clutch.inner >= clutch.outer),
          `${path}.inner`,
          `a radius below the outer one (${told.length(clutch.outer)})`,
          told.length(clutch.inner),
        );
      clutches.forEach(({ spring, pistonArea, name }, i) => {
        const kiss = spring / pistonArea;
        const expected = `a spring that the base line pressure (${told.pressure(regulator.base)}) overcomes`;
        want(
          !(kiss >= regulator.base),
          `clutches[${i}].spring`,
          expected,
          `a kiss pressure of ${told.pressure(kiss)} at the ${name}`,
        );
      });
      const spring = lockUp.clutch.spring / lockUp.clutch.pistonArea;
      want(
        !(spring >= lockUp.most),
        "lockUp.clutch.spring",
        `a spring that the apply pressure (${told.pressure(lockUp.most)}) overcomes`,
        told.pressure(spring),
      );
      want(
        !(regulator.most < regulator.base),
        "regulator.most",
        `no less than the base pressure (${told.pressure(regulator.base)})`,
        told.pressure(regulator.most),
      );
    },
  },
];
