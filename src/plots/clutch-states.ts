// The three states of a clutch, drawn: plates apart, plates that rub, plates that turn as one.

import { select, type Selection } from "d3";
import { band, ink, letters, letterWidth } from "./ink.ts";
import { sealed, sheet, type Picture } from "./picture.ts";

interface State {
  readonly name: string;
  readonly says: readonly string[];
  readonly ground: string;
  /** Gap between neighbouring plates [px], pressure behind the piston (0 to 1), whether the faces rub. */
  readonly gap: number;
  readonly pressure: number;
  readonly rubs: boolean;
}

const states: readonly State[] = [
  {
    name: "released",
    says: ["slip, but no torque:", "no heat"],
    ground: band.released,
    gap: 5,
    pressure: 0,
    rubs: false,
  },
  {
    name: "partly applied",
    says: ["slip and torque at once:", "heat"],
    ground: band.partly,
    gap: 3,
    pressure: 0.4,
    rubs: true,
  },
  {
    name: "fully applied",
    says: ["torque, but no slip:", "no heat"],
    ground: band.fully,
    gap: 0,
    pressure: 1,
    rubs: false,
  },
];

const PACK = { width: 168, height: 124 } as const;
const ROW = PACK.height + 22;

/** Three packs side by side, or one below the other where there is no room. */
export function clutchStates(picture: Picture): SVGSVGElement {
  const { width } = picture;
  const stacked = width < 600;
  const each = stacked ? width : width / 3;
  const words = 3 * (letters + 4) + 14;
  const svg = sheet(width, stacked ? 3 * ROW : PACK.height + words + 24, picture);
  states.forEach((state, i) => {
    const cell = select(svg)
      .append("g")
      .attr("transform", stacked ? `translate(0,${i * ROW})` : `translate(${i * each},0)`);
    const height = stacked ? ROW - 6 : PACK.height + words + 20;
    cell
      .append("rect")
      .attr("width", each - (stacked ? 0 : 6))
      .attr("height", height)
      .attr("fill", state.ground);
    const pack = cell
      .append("g")
      .attr("transform", `translate(${stacked ? 4 : (each - 6 - PACK.width) / 2},14)`);
    drawPack(pack, state);
    const x = stacked ? PACK.width + 14 : (each - 6) / 2;
    const y = stacked ? PACK.height / 2 - 4 : PACK.height + 38;
    const anchor = stacked ? "start" : "middle";
    const rows = stacked ? state.says.flatMap((line) => wrapped(line, width - PACK.width - 18)) : state.says;
    [state.name, ...rows].forEach((line, k) =>
      cell
        .append("text")
        .attr("x", x)
        .attr("y", y + (k - (stacked ? (rows.length - 1) / 2 : 0)) * (letters + 4))
        .attr("text-anchor", anchor)
        .attr("font-weight", k === 0 ? 600 : 400)
        .text(line),
    );
  });
  return sealed(
    svg,
    "Three packs of plates. Released: plates apart, no heat. Partly applied: plates touch and turn at different speeds, heat. Fully applied: plates squeezed, turning as one, no heat.",
  );
}

/** A line broken at spaces so that it fits a width [px]. */
function wrapped(line: string, width: number): string[] {
  const fits = Math.max(8, Math.floor(width / letterWidth));
  const rows = [""];
  for (const word of line.split(" ")) {
    const last = rows[rows.length - 1]!;
    if (last !== "" && last.length + 1 + word.length > fits) rows.push(word);
    else rows[rows.length - 1] = last === "" ? word : `${last} ${word}`;
  }
  return rows;
}

type Group = Selection<SVGGElement, unknown, null, undefined>;

/** Piston at the left, plates in turn steel (held outside) and lined (held inside), a wall at the right. */
function drawPack(pack: Group, { name, gap, pressure, rubs }: State): void {
  const [plate, count, top, middle, bottom] = [9, 7, 8, 56, 104];
  const wall = PACK.width - 18;
  const stack = count * plate + (count + 1) * gap;
  const piston = wall - stack - 12;
  const bar = (x: number, y: number, width: number, height: number, fill: string) =>
    pack
      .append("rect")
      .attr("x", x)
      .attr("y", y)
      .attr("width", width)
      .attr("height", height)
      .attr("fill", fill);
  bar(wall, top, 10, bottom - top, ink.text);
  bar(piston, top + 12, 12, bottom - top - 24, ink.text);
  for (let i = 0; i < count; i++) {
    const x = piston + 12 + gap + i * (plate + gap);
    const steel = i % 2 === 0;
    bar(x, steel ? top : top + 14, plate - 0.75, bottom - top - 14, steel ? ink.fluid : ink.asked);
    // Where faces rub there is heat: between the plates, over the height that they share.
    if (rubs && i > 0) bar(x - gap - 1, top + 14, gap + 1.5, bottom - top - 28, ink.heat);
  }
  // Arrows of pressure on the piston: longer means more. Without any, the spring has pushed it back.
  for (const y of pressure > 0 ? [middle - 24, middle, middle + 24] : []) {
    const length = 6 + 24 * pressure;
    const from = piston - 5 - length;
    pack
      .append("path")
      .attr(
        "d",
        `M${from},${y}H${piston - 6}M${piston - 11},${y - 4}L${piston - 5},${y}L${piston - 11},${y + 4}`,
      )
      .attr("fill", "none")
      .attr("stroke", ink.text)
      .attr("stroke-width", 1.75);
  }
  const note = (says: string, x: number, y: number, anchor: "start" | "middle" | "end", fill: string) =>
    pack.append("text").attr("x", x).attr("y", y).attr("text-anchor", anchor).attr("fill", fill).text(says);
  if (name === "released") {
    note("steel", piston + 12 + gap, top - 4, "start", ink.fluid);
    note("lined", piston + 12 + 2 * gap + plate, bottom + letters + 1, "start", ink.asked);
    note("piston", piston + 8, bottom + letters + 1, "end", ink.text);
  }
  if (rubs) note("pressure", 2, bottom + letters + 1, "start", ink.text);
}
