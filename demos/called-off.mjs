// Ctrl-C from the first moment on. Until the work has begun it ends the program at once; from then on the work is told, and ends itself.

const calledOff = new AbortController();
let begun = false;

function callOff() {
  if (begun) {
    calledOff.abort();
    return;
  }
  console.error("Called off; nothing was written.");
  process.exit(130);
}
process.on("SIGINT", callOff);
process.on("SIGTERM", callOff);

/** Loads a command, which takes a second or more, and runs it on the words of the command line. */
export async function start(load) {
  const { register } = await import("tsx/esm/api");
  register();
  const command = await load();
  begun = true;
  process.exitCode = await command(process.argv.slice(2), calledOff.signal);
}
