import { type ChildProcess, spawn } from 'node:child_process';
import { build } from 'vite';
import { inRepository } from '../../src/setup/root.mjs';

let built: Promise<string> | undefined;

/** Node 20 reads no TypeScript: the server is bundled first, its packages left where they are. */
const serverFile = (): Promise<string> => {
  built ??= (async () => {
    const folder = inRepository('node_modules/.shop-server-process');
    await build({
      configFile: false,
      root: inRepository('.'),
      logLevel: 'warn',
      publicDir: false,
      ssr: { target: 'node' },
      build: {
        ssr: inRepository('tests/shop/server-process.ts'),
        outDir: folder,
        emptyOutDir: false,
        target: 'node20',
        minify: false,
        rolldownOptions: { output: { entryFileNames: `server-${process.pid}.mjs`, codeSplitting: false } },
      },
    });
    return `${folder}/server-${process.pid}.mjs`;
  })();
  return built;
};

/** A server in a process of its own. */
export interface Running {
  port: number;
  /** Ends it as a power cut would. */
  kill(): Promise<void>;
  /** Ends it cleanly. @returns its exit code */
  stop(): Promise<number | null>;
  pid: number;
}

export async function running(
  folder: string,
  port = 0,
  shared?: { redis: string; postgres: string },
): Promise<Running> {
  const also = shared ? [shared.redis, shared.postgres] : [];
  const child: ChildProcess = spawn(process.execPath, [await serverFile(), folder, String(port), ...also], {
    stdio: ['ignore', 'pipe', 'inherit'],
  });
  const ended = new Promise<number | null>((done) => child.on('exit', done));
  const told = await Promise.race([
    new Promise<string>((done) => child.stdout!.once('data', (text) => done(String(text)))),
    ended.then((code) => Promise.reject(new Error(`The server ended with ${code}.`))),
  ]);
  return {
    port: Number(told),
    pid: child.pid!,
    kill: async () => {
      child.kill('SIGKILL');
      await ended;
    },
    stop: () => {
      child.kill('SIGTERM');
      return ended;
    },
  };
}
