/** The releases of Node that the pinned tool chain runs on. */
export const NODE_WANTED = '20.19 or a later 20, or 22.12 or later';

/** Whether a Node version such as `20.19.4` is one the tool chain runs on. @param {string} version */
export function nodeFits(version) {
  const [major = 0, minor = 0] = version.split('.').map(Number);
  if (major === 20) return minor >= 19;
  if (major === 22) return minor >= 12;
  return major > 22;
}
