// A shop's server as a process of its own, to be killed: node server-process.ts FOLDER PORT [REDIS POSTGRES]
import { served } from './served.ts';

const [folder, port, redis, postgres] = process.argv.slice(2);
const server = await served({
  folder: folder!,
  port: Number(port),
  ...(redis && postgres && { redis, postgres }),
});
process.on('SIGTERM', () => void server.stop().then((left) => process.exit(left > 0 ? 1 : 0)));
process.stdout.write(`${server.port}\n`);
