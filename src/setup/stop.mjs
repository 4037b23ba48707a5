/** Calls `stop` once, when this process is asked to end or whoever started it is gone. @param {() => void} stop */
export function onStop(stop) {
  let asked = false;
  const once = () => {
    if (!asked) stop();
    asked = true;
  };
  process.on('SIGINT', once).on('SIGTERM', once);
  // npm runs this through a shell that does not hand on a signal: when that shell is gone, so is whoever started us.
  if (!process.env.npm_lifecycle_event) return;
  const parent = process.ppid;
  setInterval(() => {
    if (process.ppid !== parent) once();
  }, 500).unref();
}
