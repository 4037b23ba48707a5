/** The port where nothing else is asked for. */
export const DEFAULT_PORT = 4870;

const LAST_PORT = 65_535;

/** Reads PORT. @param {string | undefined} text @returns {number | null} null where it is not a port */
export function readPort(text) {
  if (!/^\d{1,5}$/.test(text ?? '')) return null;
  const port = Number(text);
  return port <= LAST_PORT ? port : null;
}

/** @typedef {import('node:http').Server | import('node:https').Server} Server */

/**
 * @param {Server} server @param {number} port @param {string | undefined} host
 * @returns {Promise<boolean>} false where it is busy
 */
const tryPort = (server, port, host) =>
  new Promise((resolve, reject) => {
    /** @param {NodeJS.ErrnoException} error */
    const failed = (error) => {
      server.off('listening', listening);
      if (error.code === 'EADDRINUSE') resolve(false);
      else reject(error);
    };
    const listening = () => {
      server.off('error', failed);
      resolve(true);
    };
    server.once('error', failed).once('listening', listening);
    server.listen(port, host);
  });

/**
 * Listens at `port`, or, where it is busy and `next` is set, at the first free one of the 20 after it.
 * @param {Server} server
 * @param {{ port: number, next: boolean, host?: string | undefined }} wish port 0 takes any free one; `host` is the address
 *   listened on, this machine's own where it is not given, every one where it is undefined
 * @returns {Promise<number | null>} the port taken; null where all were busy
 */
export async function listen(server, wish) {
  const { port, next } = wish;
  const host = 'host' in wish ? wish.host : '127.0.0.1';
  for (let candidate = port; candidate <= Math.min(port + (next ? 20 : 0), LAST_PORT); candidate++) {
    if (await tryPort(server, candidate, host)) {
      const address = server.address();
      return address && typeof address === 'object' ? address.port : null;
    }
  }
  return null;
}
