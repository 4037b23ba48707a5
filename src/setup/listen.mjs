/** The port where nothing else is asked for. */
export const DEFAULT_PORT = 4870;

const LAST_PORT = 65_535;

/** Reads PORT. @param {string | undefined} text @returns {number | null} null where it is not a port */
export function readPort(text) {
  if (!/^\d{1,5}$/.test(text ?? '')) return null;
  const port = Number(text);
  return port <= LAST_PORT ? port : null;
}

/** @param {import('node:http').Server} server @param {number} port @returns {Promise<boolean>} false where it is busy */
const tryPort = (server, port) =>
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
    server.listen(port, '127.0.0.1');
  });

/**
 * Listens on 127.0.0.1 at `port`, or, where it is busy and `next` is set, at the first free one of the 20 after it.
 * @param {import('node:http').Server} server
 * @param {{ port: number, next: boolean }} wish port 0 takes any free one
 * @returns {Promise<number | null>} the port taken; null where all were busy
 */
export async function listen(server, { port, next }) {
  for (let candidate = port; candidate <= Math.min(port + (next ? 20 : 0), LAST_PORT); candidate++) {
    if (await tryPort(server, candidate)) {
      const address = server.address();
      return address && typeof address === 'object' ? address.port : null;
    }
  }
  return null;
}
