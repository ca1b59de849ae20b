// A smaller drawing that looks the same: a tenth of a pixel is as fine as anybody sees.

const numbers = [
  "d",
  "x",
  "y",
  "x1",
  "x2",
  "y1",
  "y2",
  "cx",
  "cy",
  "r",
  "width",
  "height",
  "transform",
  "points",
];
const attribute = new RegExp(`( (?:${numbers.join("|")})=")([^"]*)"`, "g");

/** Rounds the coordinates of an SVG to a tenth; text, colours and the view stay as they are. */
export function slimSvg(svg: string): string {
  return svg
    .replace(attribute, (_, name: string, value: string) => `${name}${rounded(value)}"`)
    .replace(/>\s+</g, "><");
}

const rounded = (value: string): string =>
  value.replace(/-?\d+\.\d+(?:e-?\d+)?/g, (number) => String(Math.round(Number(number) * 10) / 10 + 0));

/** A drawing as a file of its own, on white, so that it can be read on a dark page too. */
export function standAlone(svg: string): string {
  const [tag] = /^<svg[^>]*>/.exec(svg)!;
  return `${tag}<rect width="100%" height="100%" fill="#ffffff"/>${svg.slice(tag.length)}\n`;
}
