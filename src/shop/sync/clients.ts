import type { Entry } from './presence.ts';

/** A page writes as itself and as its other tabs: whoever comes as many more is none. */
const MOST_CLAIMED = 50;

/** Ids of the keys a device has, or had before. */
type Holds = ReadonlySet<string>;

/** Whose each client of Yjs is, by the id of a key: nobody with another key may write as it. */
export class Clients {
  /** @param keys as they are stored; taken over */
  constructor(private readonly keys: Map<number, string>) {}

  isOfOthers(client: number, holds: Holds): boolean {
    const key = this.keys.get(client);
    return key !== undefined && !holds.has(key);
  }

  /** Clients that are nobody's yet are a key's from now on. @returns them */
  claim(clients: Iterable<number>, key: string): Map<number, string> | undefined {
    const claims = new Map<number, string>();
    for (const client of clients) if (!this.keys.has(client)) claims.set(client, key);
    if (claims.size === 0 || claims.size > MOST_CLAIMED) return undefined;
    for (const client of claims.keys()) this.keys.set(client, key);
    return claims;
  }

  /** A presence without the numbers of others: what those wrote would be told as of whoever says so. */
  withOwn(entry: Entry, holds: Holds): Entry {
    if (!entry.state) return entry;
    const { edits, edited, ...state } = entry.state;
    const before = edited?.filter((client) => !this.isOfOthers(client, holds));
    return {
      ...entry,
      state: {
        ...state,
        ...(edits !== undefined && !this.isOfOthers(edits, holds) && { edits }),
        ...(before && { edited: before }),
      },
    };
  }
}
