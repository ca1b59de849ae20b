// A trailer adds to the road load what it would meet alone.
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { roadForce } from "../../src/physics/load/road.ts";
import { coupled, type Trailer } from "../../src/physics/load/towed.ts";
import { between } from "../between.ts";
import { van } from "./van.ts";

const trailers = fc.record<Trailer>({
  mass: between(0, 3500),
  dragArea: between(0, 4),
  rolling: between(0, 0.03),
  rotating: between(1, 1.1),
});

describe("vehicle and trailer", () => {
  it("are met by the sum of what each is met by, at every speed, wish and grade", () => {
    fc.assert(
      fc.property(trailers, between(0, 45), between(-6, 3), between(-0.3, 0.3), (trailer, v, a, alpha) => {
        const alone = { ...van, ...trailer, mass: Math.max(1e-9, trailer.mass) };
        const sum = roadForce(van, v, a, alpha) + roadForce(alone, v, a, alpha);
        expect(roadForce(coupled(van, trailer), v, a, alpha)).toBeCloseTo(sum, 6);
      }),
    );
  });

  it("with nothing behind is the vehicle, and keeps its tyres and its air", () => {
    expect(coupled(van, { mass: 0, dragArea: 0, rolling: 0.02, rotating: 1.02 })).toEqual(van);
  });

  it("refuses a trailer that cannot be", () => {
    const light = { mass: 500, dragArea: 1, rolling: 0.01, rotating: 1.02 };
    for (const wrong of [{ mass: -1 }, { dragArea: NaN }, { rolling: -0.1 }, { rotating: 0.9 }])
      expect(() => coupled(van, { ...light, ...wrong })).toThrow();
  });
});
