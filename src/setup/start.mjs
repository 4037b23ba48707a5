// `npm start`: builds the page where something changed, and serves it to this machine only.
import { buildPage } from './build-page.mjs';
import { DEFAULT_PORT, listen, readPort } from './listen.mjs';
import { inRepository } from './root.mjs';
import { createSiteServer } from './server.mjs';
import { readSite } from './site.mjs';
import { onStop } from './stop.mjs';

/** @param {string} message */
function giveUp(message) {
  console.error(message);
  process.exit(1);
}

const asked = process.env.PORT;
const wanted = asked ? readPort(asked) : DEFAULT_PORT;
if (wanted === null) {
  giveUp(`PORT is "${asked}", which is no port: give a number from 1 to 65535, or 0 for any free one.`);
} else {
  await buildPage();
  const server = createSiteServer(readSite(inRepository('dist/page')));
  // A port that was asked for by number is never silently changed: a bookmark or a proxy may point at it.
  const port = await listen(server, { port: wanted, next: !asked }).catch((error) => {
    giveUp(`Port ${wanted} cannot be opened: ${error.message}`);
    return null;
  });
  if (port === null) {
    giveUp(
      asked
        ? `Port ${wanted} is busy. Choose another (PORT=${wanted < 65_535 ? wanted + 1 : wanted - 1} npm start), or let it find a free one (PORT=0 npm start).`
        : `Ports ${DEFAULT_PORT} to ${DEFAULT_PORT + 20} are all busy. Let it find a free one: PORT=0 npm start`,
    );
  }
  if (wanted !== 0 && port !== wanted) console.log(`Port ${wanted} is busy: using ${port} instead.`);
  console.log(`Fitwright is open at http://127.0.0.1:${port}/ (Ctrl+C ends it)`);
  // A browser keeps jobs by address, port and all: under another one the shop looks empty.
  if (wanted !== 0 && port !== wanted)
    console.log(
      `Jobs made at http://127.0.0.1:${DEFAULT_PORT}/ are kept under that address and do not show here. Where Fitwright still runs there, go on there; to move them, save the whole shop to a file there (at the foot of the first page) and take that file in here.`,
    );

  onStop(() => {
    server.close(() => process.exit(0));
    server.closeAllConnections();
  });
}
