import type { Came } from '../../document/joined/joined-sheet.ts';
import type { Presence } from '../../document/sharing/wire.ts';
import type { Shop } from '../../document/storage/shop.ts';

/** What came of a sheet from another device, at about one time. */
export interface CameFrom {
  /** Milliseconds since 1970, when it came in here. */
  at: number;
  /** Name of the device; absent where it was not there to say so. */
  device?: string;
  /** Numbers of those who wrote it, until their device has said that it is them. */
  by?: number[];
  /** Ids of the lines it wrote. */
  cells: string[];
}

interface Kept {
  list: CameFrom[];
  /** Names of devices by the number under which they edited. */
  names: Record<string, string>;
}

const MOST = 100;
const MOST_NAMES = 300;
/** What comes from one device within so many milliseconds is told as one. */
const TOGETHER = 10 * 60_000;
/** Written down so many milliseconds after it came: somebody types there, and every entry is one. */
const WRITTEN_AFTER = 1000;

const keyOf = (id: string): string => `joined.came.${id}`;

const read = async (shop: Shop, id: string): Promise<Kept> => {
  const kept = (await shop.setting(keyOf(id))) as Partial<Kept> | undefined;
  return { list: kept?.list ?? [], names: kept?.names ?? {} };
};

/** Those of sheets that are open: what they have heard may not be written down yet. */
const open = new Map<string, Promise<Kept>>();

/** The last first. */
export const cameTo = async (shop: Shop, id: string): Promise<CameFrom[]> =>
  [...(await (open.get(id) ?? read(shop, id))).list].reverse();

/** Nobody is named where several wrote, or one who has not said who they are: who wrote which line is not told. */
const deviceOf = (clients: readonly number[], names: Kept['names']): string | undefined => {
  const devices = new Set(clients.map((client) => names[client]));
  return devices.size === 1 ? [...devices][0] : undefined;
};

/** Keeps, of one sheet, from which device what came. */
export class CameKeeper {
  private readonly kept: Promise<Kept>;
  private timer: ReturnType<typeof setTimeout> | undefined;

  constructor(
    private readonly shop: Shop,
    private readonly id: string,
  ) {
    this.kept = read(shop, id);
    open.set(id, this.kept);
  }

  async meet(others: readonly Presence[]): Promise<void> {
    const { names, list } = await this.kept;
    let isNews = false;
    for (const { device, edits, edited = [] } of others)
      for (const number of edits === undefined ? edited : [edits, ...edited])
        if (names[number] !== device) {
          names[number] = device;
          isNews = true;
        }
    if (!isNews) return;
    // What came before its device said who it is.
    for (const one of list) {
      const device = one.by && deviceOf(one.by, names);
      if (device === undefined) continue;
      one.device = device;
      delete one.by;
    }
    this.writeLater();
  }

  async note({ clients, cells }: Came): Promise<void> {
    if (cells.length === 0) return;
    const { list, names } = await this.kept;
    const device = deviceOf(clients, names);
    const at = Date.now();
    const last = list.at(-1);
    const by = device === undefined ? [...clients] : undefined;
    if (last && last.device === device && String(last.by) === String(by) && at - last.at < TOGETHER) {
      last.cells = [...new Set([...last.cells, ...cells])];
      last.at = at;
    } else list.push({ at, cells: [...cells], ...(by ? { by } : { device: device! }) });
    this.writeLater();
  }

  /** Writes what waits. */
  close(): void {
    if (open.get(this.id) === this.kept) open.delete(this.id);
    if (this.timer === undefined) return;
    clearTimeout(this.timer);
    this.timer = undefined;
    void this.write();
  }

  private writeLater(): void {
    this.timer ??= setTimeout(() => {
      this.timer = undefined;
      void this.write();
    }, WRITTEN_AFTER);
  }

  private async write(): Promise<void> {
    const kept = await this.kept;
    kept.list = kept.list.slice(-MOST);
    kept.names = Object.fromEntries(Object.entries(kept.names).slice(-MOST_NAMES));
    await this.shop.setSetting(keyOf(this.id), kept);
  }
}
