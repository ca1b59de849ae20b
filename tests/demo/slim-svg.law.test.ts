// A slimmer drawing keeps its words, its ends and its bends.
import { expect, test } from "vitest";
import { slimSvg, standAlone } from "../../demos/report/slim-svg.ts";
import { brokenTags } from "./well-formed.ts";

const svg =
  '<svg viewBox="0 0 9.87654 1">\n  <path d="M0,1.04L1,1.01L2,0.99L3,1L4.26,5L5,5L6,5" stroke-width="0.123"/>' +
  '<path d="M0,0A5.55,5,0,1,1,3,0Z"/><text x="1.2345">0.12345 s</text></svg>';

test("rounds where nobody sees it and drops what lies on a level run", () => {
  const slim = slimSvg(svg);
  expect(slim).toContain('d="M0,1L3,1L4.3,5L6,5"');
  expect(slim).toContain('stroke-width="0.123"');
  expect(slim).toContain('viewBox="0 0 9.87654 1"');
  expect(slim).toContain('<text x="1.2">0.12345 s</text>');
  expect(slim).toMatch(/d="M0,0A5\.[56],5,0,1,1,3,0Z"/);
  const curved = '<path d="M0,0L1,0C1,0,2,0,2,0L3,0C3,0,4,0,4,0L5,1Z"/>';
  expect(slimSvg(curved)).toBe(curved);
  expect(slimSvg(slim)).toBe(slim);
  expect(brokenTags(slim)).toEqual([]);
});

test("stands on white where it stands alone", () => {
  expect(standAlone(slimSvg(svg))).toMatch(/^<svg[^>]*><rect [^>]*fill="#ffffff"\/><path/);
});

test("the check of tags notices", () => {
  expect(brokenTags('<svg><g a=">"/></svg>')).toEqual([]);
  expect(brokenTags("<svg><g></svg>")).not.toEqual([]);
  expect(brokenTags("<svg><g>")).toEqual(["svg", "g"]);
});
