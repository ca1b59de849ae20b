// `npm run ensemble`: runs a case over all that its uncertain numbers may be, and tells in which band each event lies.
// The rest is loaded only when Ctrl-C is already listened to, since loading takes a second or more.

const calledOff = new AbortController();
process.once("SIGINT", () => calledOff.abort());
process.once("SIGTERM", () => calledOff.abort());

const { run } = await import("./ensemble/run.ts");
process.exitCode = await run(process.argv.slice(2), calledOff.signal);
