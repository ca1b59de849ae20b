import "../parts/page.css";
import page from "./page.ts";

page(document.querySelector("main")!, {
  history: () => new Worker(new URL("./worker.ts", import.meta.url), { type: "module" }),
  fade: () => new Worker(new URL("./fade-worker.ts", import.meta.url), { type: "module" }),
});
