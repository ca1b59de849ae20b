import "../parts/page.css";
import page from "./page.ts";

page(document.querySelector("main")!, {
  early: () => new Worker(new URL("./early-worker.ts", import.meta.url), { type: "module" }),
  prepare: () => new Worker(new URL("./prepare-worker.ts", import.meta.url), { type: "module" }),
  look: () => new Worker(new URL("./look-worker.ts", import.meta.url), { type: "module" }),
});
