import { defineConfig } from "vitest/config";

// Set by the continuous integration script: where to write the counts besides the usual output.
const report = process.env.SUMPFALL_TEST_REPORT;

export default defineConfig({
  test: {
    reporters: report ? ["default", ["json", { outputFile: report }]] : ["default"],
    maxWorkers: 2,
    projects: [
      {
        extends: true,
        test: {
          name: "library",
          setupFiles: ["tests/seed.ts"],
          include: ["tests/**/*.test.ts"],
          exclude: ["tests/browser/**"],
          // Long enough for a machine that is busy with other work: no test measures time.
          testTimeout: 120_000,
          sequence: { groupOrder: 0 },
        },
      },
      {
        extends: true,
        test: {
          name: "browser",
          include: ["tests/browser/**/*.test.ts"],
          testTimeout: 120_000,
          hookTimeout: 120_000,
          // One browser at a time, and only once the other tests have left both cores free.
          maxWorkers: 1,
          sequence: { groupOrder: 1 },
        },
      },
    ],
  },
});
