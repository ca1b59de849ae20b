// Drops while they can be counted, a volume a minute from then on, in either system.
import { describe, expect, test } from "vitest";
import { leakWords } from "../../src/bay/leak-words.ts";
import { retold } from "../../src/units/retold.ts";

const perMinute = 1e-6 / 60; // a millilitre a minute [m³/s]

describe("what runs at a leak", () => {
  test.each([
    [0, 0, "none", "none"],
    [0.0193, 1, "1.2 drops/h", "1.2 drops/h"],
    [119.6, 8, "120 drops/min", "120 drops/min"],
    [150, 10, "0.34 fl oz/min", "10 mL/min"],
    [1e4, 1000, "34 fl oz/min", "1000 mL/min"],
    [1e5, 4800, "5.1 qt/min", "4.8 L/min"],
  ])("%d drops a minute, %d mL a minute", (drops, millilitres, US, SI) => {
    expect(leakWords(drops, millilitres * perMinute, "US")).toBe(US);
    expect(leakWords(drops, millilitres * perMinute, "SI")).toBe(SI);
  });
});

describe("a sentence told in the reader's units", () => {
  test.each([
    ["stick under its low mark, hot (75 to 90 degC), idling", "hot (167 to 194 °F)", "hot (75 to 90 °C)"],
    ["fluid from -10 to 30 degC", "from 14 to 86 °F", "from -10 to 30 °C"],
    [
      "more than 3 m/s under the schedule for 5 s",
      "than 6.7 mph under the schedule for 5 s",
      "than 11 km/h under",
    ],
    ["0.95 L added", "1 qt added", "0.95 L added"],
    ["-5 °C, just started", "23 °F, just", "-5 °C, just"],
    [
      "launch at 0.25 g, hot: lowest in 5 s, 100 rpm, 97 %",
      "0.25 g, hot: lowest in 5 s, 100 rpm, 97 %",
      "0.25 g, hot: lowest in 5 s",
    ],
    ["3 m/s2 and 5 m³", "3 m/s2 and 5 m³", "3 m/s2 and 5 m³"],
  ])("%s", (sentence, US, SI) => {
    expect(retold(sentence, "US")).toContain(US);
    expect(retold(sentence, "SI")).toContain(SI);
  });
});
