import { type ChildProcess, spawn, spawnSync } from 'node:child_process';
import { chownSync, mkdtempSync, rmSync } from 'node:fs';
import type { AddressInfo } from 'node:net';
import { connect, createServer } from 'node:net';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import pg from 'pg';
import { findServices } from '../../src/setup/services.mjs';

/** A Redis and a PostgreSQL of their own, for as long as a test runs. */
export interface Services {
  redis: string;
  postgres: string;
  /** Ends Redis, and begins it again. */
  redisDown(): Promise<void>;
  redisUp(): Promise<void>;
  stop(): Promise<void>;
}

const found = findServices();
export const haveServices = found.redis !== undefined && found.postgres !== undefined;

const freePort = (): Promise<number> =>
  new Promise((settle) => {
    const server = createServer().listen(0, '127.0.0.1', () => {
      const { port } = server.address() as AddressInfo;
      server.close(() => settle(port));
    });
  });

const answers = async (port: number): Promise<void> => {
  for (let i = 0; i < 400; i += 1) {
    const there = await new Promise<boolean>((settle) => {
      const socket = connect(port, '127.0.0.1', () => settle(true));
      socket.on('error', () => settle(false));
      socket.on('close', () => settle(false));
      setTimeout(() => socket.destroy(), 500).unref();
    });
    if (there) return;
    await new Promise((done) => setTimeout(done, 25));
  }
  throw new Error(`Nothing answers on port ${port}.`);
};

const ended = (child: ChildProcess, signal: NodeJS.Signals): Promise<void> =>
  new Promise((done) => {
    if (child.exitCode !== null || child.signalCode !== null) return done();
    child.on('exit', () => done());
    child.kill(signal);
  });

/** PostgreSQL refuses to run as root. */
const anotherUser = (): { uid?: number; gid?: number } => {
  if (process.getuid?.() !== 0) return {};
  const id = (what: string) =>
    Number(
      ['postgres', 'nobody']
        .map((user) => spawnSync('id', [what, user], { encoding: 'utf8' }))
        .find(({ status }) => status === 0)?.stdout,
    );
  return { uid: id('-u'), gid: id('-g') };
};

export async function services(): Promise<Services> {
  const folder = mkdtempSync(join(tmpdir(), 'fitwright-services-'));
  const [redisPort, postgresPort] = [await freePort(), await freePort()];
  const address = `postgres://shop@127.0.0.1:${postgresPort}/postgres`;
  const user = anotherUser();
  if (user.uid !== undefined) chownSync(folder, user.uid, user.gid!);
  const options = { cwd: folder, stdio: 'ignore' as const, ...user };

  const data = join(folder, 'data');
  const made = spawnSync(
    join(found.postgres!, 'initdb'),
    ['-D', data, '-A', 'trust', '-U', 'shop', '--no-sync', '-E', 'UTF8', '--locale=C'],
    {
      ...options,
      stdio: 'pipe',
      encoding: 'utf8',
    },
  );
  if (made.status !== 0) throw new Error(`initdb: ${made.stderr}`);
  const postgres = spawn(
    join(found.postgres!, 'postgres'),
    ['-D', data, '-p', String(postgresPort), '-h', '127.0.0.1', '-k', folder],
    options,
  );
  let redis: ChildProcess | undefined;
  const redisUp = async () => {
    redis = spawn(
      found.redis!,
      [
        '--port',
        String(redisPort),
        '--bind',
        '127.0.0.1',
        '--save',
        '',
        '--appendonly',
        'no',
        '--dir',
        folder,
      ],
      options,
    );
    await answers(redisPort);
  };
  const redisDown = () => ended(redis!, 'SIGKILL');
  const stop = async () => {
    await Promise.all([redisDown(), ended(postgres, 'SIGINT')]);
    rmSync(folder, { recursive: true, force: true });
  };
  try {
    await Promise.all([redisUp(), answers(postgresPort)]);
    // It listens before it is ready.
    for (let i = 0; ; i += 1) {
      const client = new pg.Client(address);
      client.on('error', () => {});
      try {
        await client.connect();
        await client.end();
        break;
      } catch (error) {
        if (i === 200) throw error;
        await new Promise((done) => setTimeout(done, 25));
      }
    }
  } catch (error) {
    await stop();
    throw error;
  }
  return {
    redis: `redis://127.0.0.1:${redisPort}`,
    postgres: address,
    redisDown,
    redisUp,
    stop,
  };
}
