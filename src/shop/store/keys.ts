import { createHash, randomBytes, timingSafeEqual } from 'node:crypto';
import type { KeyRecord, KeyWish, NewKey, Refusal } from '../../document/sharing/wire.ts';
import { bytesOf, type Database, type Row } from './database.ts';

interface Kept extends KeyRecord {
  hash: Uint8Array;
  /** Made only to be printed at a start. */
  printed: boolean;
}

/** A key that is not known may have been made a moment ago by another process; asked no more often than this, milliseconds. */
const FRESH = 250;
/** A use is written down no more often than this. */
const USES = 60_000;

/** A random key is guessed by nobody, so a plain hash of it is enough: there is nothing to slow a guess down for. */
const hashOf = (key: string): Uint8Array => createHash('sha256').update(key).digest();

/** The keys of a shop: 128 random bits each, of which only the hash is kept. */
export class Keys {
  private kept: Kept[] = [];
  private read = Number.NEGATIVE_INFINITY;
  private timer: NodeJS.Timeout | undefined;
  private looking: Promise<void> | undefined;

  private ended: (ids: ReadonlySet<string>) => void = () => {};

  constructor(private readonly database: Database) {}

  /** Tells the ids of keys that have ended, here or elsewhere, since the last look. */
  whenEnded(listener: (ids: ReadonlySet<string>) => void): void {
    this.ended = listener;
  }

  /** Looks for keys that another process made or ended, now and from then on. */
  async follow(every: number): Promise<void> {
    await this.refresh();
    // A store that does not answer is told of by whoever writes to it; keys stay as they were.
    this.timer = setInterval(() => void this.refresh().catch(() => {}), every);
  }

  stop(): void {
    clearInterval(this.timer);
  }

  /** Makes a key; it is told this once. `given` is a key that the shop chose itself. */
  async make(
    wish: KeyWish,
    { given, printed = false }: { given?: string; printed?: boolean } = {},
  ): Promise<NewKey> {
    const key = given ?? randomBytes(16).toString('base64url');
    const hash = hashOf(key);
    const held = given === undefined ? undefined : await this.find(key);
    if (held) return { ...recordOf(held), key };
    const id = randomBytes(6).toString('hex');
    const made = Date.now();
    await this.database.transaction((run) =>
      run(
        'INSERT INTO keys (id, hash, label, sheet, reads_only, printed, made) VALUES (?, ?, ?, ?, ?, ?, ?)',
        id,
        hash,
        wish.label,
        wish.sheet ?? null,
        wish.readOnly ? 1 : 0,
        printed ? 1 : 0,
        made,
      ),
    );
    await this.refresh();
    return { ...wish, id, made, key };
  }

  async list(): Promise<KeyRecord[]> {
    await this.refresh();
    return this.kept.map(recordOf);
  }

  /** @returns whether there is such a key. */
  async end(id: string): Promise<boolean> {
    const rows = await this.database.transaction((run) =>
      run('UPDATE keys SET ended = COALESCE(ended, ?) WHERE id = ? RETURNING id', Date.now(), id),
    );
    await this.refresh();
    return rows.length > 0;
  }

  /** Ends the keys that were printed at earlier starts and with which no device ever came. */
  async endUnused(): Promise<void> {
    await this.database.transaction((run) =>
      run('UPDATE keys SET ended = ? WHERE printed = 1 AND last_used IS NULL AND ended IS NULL', Date.now()),
    );
    await this.refresh();
  }

  /** What a key may, or why it may nothing. */
  async rightsOf(key: string): Promise<KeyRecord | Refusal> {
    const found = await this.find(key);
    if (!found) return 'key-unknown';
    if (found.ended !== undefined) return 'key-ended';
    this.use(found);
    return recordOf(found);
  }

  /** Ids of those of the keys that are or were this shop's. */
  idsOf(keys: readonly string[]): string[] {
    return keys.flatMap((key) => this.among(key)?.id ?? []);
  }

  private async find(key: string): Promise<Kept | undefined> {
    const found = this.among(key);
    if (found) return found;
    this.looking ??= this.lookAgain().finally(() => {
      this.looking = undefined;
    });
    await this.looking;
    return this.among(key);
  }

  private async lookAgain(): Promise<void> {
    const wait = FRESH - (performance.now() - this.read);
    if (wait > 0) await new Promise((done) => setTimeout(done, wait));
    await this.refresh();
  }

  /** Compares with every key there is, in a time that does not hang on which one it is. */
  private among(key: string): Kept | undefined {
    const hash = hashOf(key);
    let found: Kept | undefined;
    for (const kept of this.kept) if (timingSafeEqual(kept.hash, hash)) found = kept;
    return found;
  }

  private use(kept: Kept): void {
    const now = Date.now();
    if (kept.lastUsed !== undefined && Math.abs(now - kept.lastUsed) < USES) return;
    kept.lastUsed = now;
    this.database
      .transaction((run) => run('UPDATE keys SET last_used = ? WHERE id = ?', now, kept.id))
      .catch(() => {});
  }

  private async refresh(): Promise<void> {
    const rows = await this.database.transaction((run) => run('SELECT * FROM keys ORDER BY made, id'));
    const before = new Map(this.kept.map((kept) => [kept.id, kept]));
    this.kept = rows.map(keptOf);
    this.read = performance.now();
    const ended = new Set<string>();
    for (const kept of this.kept) {
      const was = before.get(kept.id);
      if (kept.ended !== undefined && was && was.ended === undefined) ended.add(kept.id);
      // Used a moment ago, and not yet written down.
      if (was?.lastUsed !== undefined) kept.lastUsed = Math.max(kept.lastUsed ?? 0, was.lastUsed);
    }
    if (ended.size > 0) this.ended(ended);
  }
}

const keptOf = (row: Row): Kept => ({
  id: String(row.id),
  hash: bytesOf(row.hash),
  label: String(row.label),
  ...(row.sheet !== null && { sheet: String(row.sheet) }),
  readOnly: Number(row.reads_only) === 1,
  printed: Number(row.printed) === 1,
  made: Number(row.made),
  ...(row.ended !== null && { ended: Number(row.ended) }),
  ...(row.last_used !== null && { lastUsed: Number(row.last_used) }),
});

const recordOf = ({ hash: _hash, printed: _printed, ...record }: Kept): KeyRecord => record;
