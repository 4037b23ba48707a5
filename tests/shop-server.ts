import { type ChildProcess, spawn } from 'node:child_process';
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import type { KeyWish, NewKey } from '../src/document/sharing/wire.ts';
import { inRepository } from '../src/setup/root.mjs';

/** A shop's server as `npm run shop` starts it, in a process and a folder of its own. */
export interface ShopServer {
  port: number;
  /** The key of the link it printed. */
  key: string;
  folder: string;
  make(wish: KeyWish): Promise<NewKey>;
  end(id: string): Promise<void>;
  /** SIGKILL. */
  kill(): Promise<void>;
  /** Once more, over the same folder and port. */
  start(): Promise<void>;
  /** Asks it to end. @returns its exit code, and takes its folder away. */
  stop(): Promise<number | null>;
}

/** Another machine; over plain HTTP no secure origin. */
export const NAME = 'shop.test';

/** Starts it and waits for the link it prints. */
const started = (
  folder: string,
  port: number,
  given: readonly string[],
): Promise<{ process: ChildProcess; text: string }> =>
  new Promise((resolve, reject) => {
    const args = ['src/setup/shop.mjs', '--data', folder, '--port', String(port), '--name', NAME, ...given];
    const process_ = spawn(process.execPath, args, {
      cwd: inRepository('.'),
      stdio: ['ignore', 'pipe', 'pipe'],
      // Not as npm starts it: the tests may run under npm themselves.
      env: { ...process.env, npm_lifecycle_event: '' },
    });
    let text = '';
    const hear = (part: Buffer) => {
      text += part.toString();
      if (/#\/join\/[\w-]{22}\n/.test(text)) resolve({ process: process_, text });
    };
    process_.stdout.on('data', hear);
    process_.stderr.on('data', hear);
    process_.on('exit', (code) => reject(new Error(`The server ended with ${code}: ${text}`)));
  });

const ended = (process: ChildProcess): Promise<number | null> =>
  new Promise((resolve) => {
    if (process.exitCode !== null || process.signalCode !== null) resolve(process.exitCode);
    else process.once('exit', resolve);
  });

/** @param options more of the command line, such as a certificate */
export const shopServer = async (options: readonly string[] = []): Promise<ShopServer> => {
  const folder = mkdtempSync(join(tmpdir(), 'fitwright-shop-'));
  let { process: running, text } = await started(folder, 0, options);
  const port = Number(/:(\d+)\/ \(Ctrl/.exec(text)?.[1]);
  const key = /#\/join\/([\w-]{22})/.exec(text)![1]!;
  const ask = async (path: string, init: RequestInit): Promise<unknown> => {
    const answer = await fetch(`http://127.0.0.1:${port}${path}`, {
      ...init,
      headers: { authorization: `Bearer ${key}` },
    });
    if (!answer.ok) throw new Error(await answer.text());
    return answer.json();
  };
  return {
    port,
    key,
    folder,
    make: (wish) => ask('/shop/keys', { method: 'POST', body: JSON.stringify(wish) }) as Promise<NewKey>,
    end: async (id) => void (await ask(`/shop/keys/${id}`, { method: 'DELETE' })),
    kill: async () => {
      running.kill('SIGKILL');
      await ended(running);
    },
    start: async () => {
      ({ process: running, text } = await started(folder, port, [...options, '--key', key]));
    },
    stop: async () => {
      running.kill('SIGTERM');
      const code = await ended(running);
      rmSync(folder, { recursive: true, force: true });
      return code;
    },
  };
};
