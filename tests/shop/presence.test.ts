import { afterAll, afterEach, beforeAll, expect, it, vi } from 'vitest';
import { WebSocket } from 'ws';
import { JoinedSheet } from '../../src/document/joined/joined-sheet.ts';
import { lineAddress, ShopLine } from '../../src/document/joined/shop-line.ts';
import { SheetDocument } from '../../src/document/sheet-document.ts';
import { dropFolder, type Served, served } from './served.ts';

let server: Served;
const lines: ShopLine[] = [];

beforeAll(() => void vi.stubGlobal('WebSocket', WebSocket));
afterAll(() => void vi.unstubAllGlobals());
afterEach(async () => {
  for (const line of lines.splice(0)) line.close();
  await server.stop();
  dropFolder(server.folder);
});

const page = (key: string) => {
  const line = new ShopLine(lineAddress(`http://127.0.0.1:${server.port}/`), key);
  lines.push(line);
  const sheet = new SheetDocument('saw-arbor');
  const joined = new JoinedSheet(line, sheet, (update) => sheet.applyUpdate(update, 'remote'));
  const { socket } = line as unknown as { socket: { webSocket: WebSocket | null } };
  const isOpen = () => expect.poll(() => joined.state.get().line).toBe('open');
  return {
    joined,
    isOpen,
    others: () => joined.others.get().map(({ device }) => device),
    /** The line comes back by itself. */
    loseLine: async () => {
      socket.webSocket?.close();
      await expect.poll(() => joined.state.get().line).toBe('away');
      await isOpen();
    },
  };
};

// Each page says that it is there every 15 seconds: what is seen before that is seen because the line is back.
it('after a lost line each page sees the other at once, whichever of them lost it', async () => {
  server = await served();
  const key = await server.key();
  const [desk, phone] = [page(key), page(key)];
  await desk.isOpen();
  await phone.isOpen();
  desk.joined.tell({ device: 'Desk' });
  phone.joined.tell({ device: 'Phone' });
  for (const lost of [phone, desk]) {
    await expect.poll(desk.others).toEqual(['Phone']);
    await expect.poll(phone.others).toEqual(['Desk']);
    await lost.loseLine();
  }
  await expect.poll(desk.others).toEqual(['Phone']);
  await expect.poll(phone.others).toEqual(['Desk']);
});
