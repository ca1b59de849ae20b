import { existsSync, readdirSync } from "node:fs";
import { join } from "node:path";
import { defineConfig } from "vite";

const pages = join(import.meta.dirname, "demos/pages");

// Every .html file under demos/pages is a page of its own.
export default defineConfig(({ command }) => ({
  root: pages,
  base: "./",
  appType: "mpa",
  worker: { format: "es" },
  build: {
    outDir: "../../dist-pages",
    emptyOutDir: true,
    ...(command === "build" && existsSync(pages)
      ? {
          rolldownOptions: {
            input: readdirSync(pages, { recursive: true, encoding: "utf8" })
              .filter((name) => name.endsWith(".html"))
              .map((name) => join(pages, name)),
          },
        }
      : {}),
  },
}));
