// A smaller drawing that looks the same: a tenth of a pixel is as fine as anybody sees.

const attribute = /( (?:d|x|y|x1|x2|y1|y2|cx|cy|r|width|height|transform|points)=")([^"]*)"/g;

/** Rounds the coordinates of an SVG to a tenth and leaves out points on a level run; text, colours and the view stay. */
export function slimSvg(svg: string): string {
  return svg
    .replace(attribute, (_, name: string, value: string) => `${name}${rounded(value)}"`)
    .replace(/ d="(M[^"]*)"/g, (_, path: string) => ` d="${withoutLevelPoints(path)}"`)
    .replace(/>\s+</g, "><");
}

/** A path of straight lines without the points that have the same height as both their neighbours. */
function withoutLevelPoints(path: string): string {
  const points = path.match(/[ML][^ML]*/g)!;
  const height = (point: string | undefined) => /^[ML][^,]*,([-\d.]+)$/.exec(point ?? "")?.[1];
  const kept = points.filter((point, i) => {
    const here = height(point);
    const between = point.startsWith("L") && points[i + 1]?.startsWith("L") === true;
    return here === undefined || !between || here !== height(points[i - 1]) || here !== height(points[i + 1]);
  });
  return kept.join("");
}

const rounded = (value: string): string =>
  value.replace(/-?\d+\.\d+(?:e-?\d+)?/g, (number) => String(Math.round(Number(number) * 10) / 10 + 0));

/** A drawing as a file of its own, on white, so that it can be read on a dark page too. */
export function standAlone(svg: string): string {
  const [tag] = /^<svg[^>]*>/.exec(svg)!;
  return `${tag}<rect width="100%" height="100%" fill="#ffffff"/>${svg.slice(tag.length)}\n`;
}
