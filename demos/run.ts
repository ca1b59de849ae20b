// `npm run demo`: runs a case from full to its end, prints what happened, and writes the report to a folder.
// The rest is loaded only when Ctrl-C is already listened to, since loading takes a second or more.

const calledOff = new AbortController();
process.once("SIGINT", () => calledOff.abort());
process.once("SIGTERM", () => calledOff.abort());

const { demo } = await import("./report/demo.ts");
process.exitCode = await demo(process.argv.slice(2), calledOff.signal);
