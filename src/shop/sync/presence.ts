import * as decoding from 'lib0/decoding';
import * as encoding from 'lib0/encoding';
import { type Presence, presenceIn } from '../../document/sharing/wire.ts';

/** What is said of one device: null that it has left. */
export interface Entry {
  client: number;
  clock: number;
  state: Presence | null;
}

/** A device speaks of itself, and perhaps of a few that it saw leave. */
const MOST = 2000;

/** @returns undefined for what is no update of presence. */
export const entriesIn = (bytes: Uint8Array): Entry[] | undefined => {
  try {
    const decoder = decoding.createDecoder(bytes);
    const count = decoding.readVarUint(decoder);
    if (count > MOST) return undefined;
    const entries: Entry[] = [];
    for (let i = 0; i < count; i += 1) {
      const client = decoding.readVarUint(decoder);
      const clock = decoding.readVarUint(decoder);
      const state: unknown = JSON.parse(decoding.readVarString(decoder));
      // A page that has no name yet is nobody.
      entries.push({ client, clock, state: presenceIn(state) ?? null });
    }
    return decoding.hasContent(decoder) ? undefined : entries;
  } catch {
    return undefined;
  }
};

export const entryBytes = (entries: readonly Entry[]): Uint8Array => {
  const encoder = encoding.createEncoder();
  encoding.writeVarUint(encoder, entries.length);
  for (const { client, clock, state } of entries) {
    encoding.writeVarUint(encoder, client);
    encoding.writeVarUint(encoder, clock);
    encoding.writeVarString(encoder, JSON.stringify(state));
  }
  return encoding.toUint8Array(encoder);
};

/** Milliseconds after which a device of another server that says nothing is gone; each says something every 15 seconds. */
const SILENT = 45_000;

interface Known<Owner> extends Entry {
  /** Undefined for a device of another server. */
  owner: Owner | undefined;
  at: number;
}

/** Who is on a document. A device's state is its own alone: nobody else may say or end it. */
export class PresenceTable<Owner> {
  private readonly known = new Map<number, Known<Owner>>();

  /** @returns what of the entries is to be passed on. */
  take(entries: readonly Entry[], owner: Owner | undefined): Entry[] {
    const news: Entry[] = [];
    for (const entry of entries) {
      const { client, clock, state } = entry;
      const held = this.known.get(client);
      if (held && held.owner !== owner) continue;
      if (!held) {
        // One device a connection: whoever has one may not name another.
        if (state === null || (owner !== undefined && this.of(owner).length > 0)) continue;
      } else if (clock < held.clock) continue;
      if (state === null) this.known.delete(client);
      else this.known.set(client, { client, clock, state, owner, at: performance.now() });
      news.push(entry);
    }
    return news;
  }

  /** @returns what to tell the others when an owner has gone. */
  leave(owner: Owner): Entry[] {
    return this.gone(this.of(owner));
  }

  /** Ends devices of other servers that say nothing any more. */
  expire(): Entry[] {
    const before = performance.now() - SILENT;
    return this.gone([...this.known.values()].filter((one) => one.owner === undefined && one.at < before));
  }

  /** Everybody, or those of this server alone. */
  all(here = false): Entry[] {
    return [...this.known.values()]
      .filter((one) => !here || one.owner !== undefined)
      .map(({ client, clock, state }) => ({ client, clock, state }));
  }

  private of(owner: Owner): Array<Known<Owner>> {
    return [...this.known.values()].filter((one) => one.owner === owner);
  }

  private gone(those: ReadonlyArray<Known<Owner>>): Entry[] {
    for (const { client } of those) this.known.delete(client);
    return those.map(({ client, clock }) => ({ client, clock, state: null }));
  }
}
