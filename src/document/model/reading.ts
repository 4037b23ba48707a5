import type { TextKind } from '../../../shared/sheet/field.ts';
import type { CellRecord, Dismissal } from '../../../shared/sheet/format.ts';
import { unflatten } from './fields.ts';
import { type Named, shownNames } from './names.ts';
import { byPlace } from './order.ts';
import { withLists } from './readings.ts';
import { idsIn, toNames, toStored } from './references.ts';
import { GONE, ORDER, type Replica } from './replica.ts';
import { textKind } from './texts.ts';

/** The sheet as people see it: in order, with names. Keeps what it worked out until a field is touched. */
export class Reading {
  private records = new Map<string, CellRecord>();
  private usesOf = new Map<string, ReadonlySet<string>>();
  private names: Map<string, string> | undefined;
  /** What of the live cells the names were made from. */
  private named = new Map<string, Named>();
  /** Cells written since, with the cells they referred to before. */
  private touched = new Map<string, ReadonlySet<string> | undefined>();
  private ids: Map<string, string> | undefined;
  private places: string[] | undefined;
  private shown: ReadonlyMap<string, string> = new Map();
  private lastNames = new Map<string, string>();
  private meant: ReadonlyMap<string, string> | undefined;

  constructor(private readonly replica: Replica) {}

  /** Must be called for every cell written, by whatever way. */
  touch(id: string): void {
    if (!this.touched.has(id)) this.touched.set(id, this.usesOf.get(id));
    this.records.delete(id);
    this.usesOf.delete(id);
    this.places = undefined;
  }

  order(): readonly string[] {
    this.places ??= this.replica
      .live()
      .map((id) => [String(this.replica.get(id, ORDER) ?? ''), id] as [string, string])
      .sort(byPlace)
      .map(([, id]) => id);
    return this.places;
  }

  /** Cells the texts of a cell refer to. */
  uses(id: string): ReadonlySet<string> {
    let uses = this.usesOf.get(id);
    if (!uses) {
      const found = new Set<string>();
      for (const [path, value] of this.replica.fields(id)) {
        if (typeof value === 'string' && textKind(path)) for (const other of idsIn(value)) found.add(other);
        if (path === 'dismissed' && Array.isArray(value)) {
          for (const { text } of value as Dismissal[])
            for (const other of idsIn(String(text))) found.add(other);
        }
      }
      uses = found;
      this.usesOf.set(id, uses);
    }
    return uses;
  }

  /** Live cells whose texts refer to one of these. */
  usedBy(ids: ReadonlySet<string>): string[] {
    return this.replica.live().filter((id) => {
      for (const other of this.uses(id)) if (ids.has(other)) return true;
      return false;
    });
  }

  nameOf(id: string): string | undefined {
    return this.allNames().get(id);
  }

  idOf(name: string): string | undefined {
    this.allNames();
    return this.ids?.get(name);
  }

  /** While `fn` runs, these names stand for these cells: lines that were copied speak of their copies. */
  withNames<T>(names: ReadonlyMap<string, string>, fn: () => T): T {
    this.meant = names;
    try {
      return fn();
    } finally {
      this.meant = undefined;
    }
  }

  /** What the page calls a cell where it has no name. */
  title(id: string): string {
    const label = this.replica.get(id, 'label');
    return this.nameOf(id) ?? (typeof label === 'string' && label !== '' ? label : 'a line');
  }

  /** Text as typed to text as stored; a bare name in an input is another cell, never the cell it stands in. */
  store(text: string, kind: TextKind, self: string): string {
    const bare = kind === 'input' && !text.trimStart().startsWith('=');
    return toStored(text, kind, (name) => {
      const id = this.meant?.get(name) ?? this.idOf(name);
      return bare && (id === self || !this.isRecord(id)) ? undefined : id;
    });
  }

  show(stored: string): string {
    return toNames(stored, (id) => this.nameOf(id));
  }

  cell(id: string): CellRecord | undefined {
    if (!this.replica.has(id)) return undefined;
    this.allNames();
    let record = this.records.get(id);
    if (!record) {
      record = this.build(id);
      this.records.set(id, record);
    }
    return record;
  }

  /** Cells whose texts or name changed because names did, since last asked. */
  renamed(): Set<string> {
    const now = this.allNames();
    const changed = new Set<string>();
    if (now === this.shown) return changed;
    for (const [id, name] of now) if (this.shown.get(id) !== name) changed.add(id);
    for (const id of this.shown.keys()) if (!now.has(id)) changed.add(id);
    this.shown = now;
    if (changed.size === 0) return changed;
    const all = new Set(this.usedBy(changed));
    for (const id of changed) if (this.replica.has(id)) all.add(id);
    return all;
  }

  // A choice such as `steel` must not turn into a reference because a line is called so: only a library cell is a record.
  private isRecord(id: string | undefined): boolean {
    return id !== undefined && this.replica.get(id, 'role') === 'cell';
  }

  private namedNow(id: string): Named {
    const [name, label] = [this.replica.get(id, 'name'), this.replica.get(id, 'label')];
    return {
      id,
      name: typeof name === 'string' && name !== '' ? name : undefined,
      label: typeof label === 'string' ? label : undefined,
    };
  }

  /** Whether what was written in a cell may give some cell another name; an entry does so only by what it refers to. */
  private mayRename(id: string, usedBefore: ReadonlySet<string> | undefined): boolean {
    const before = this.named.get(id);
    if (!before || !usedBefore || !this.replica.has(id)) return true;
    const now = this.namedNow(id);
    if (now.name !== before.name || now.label !== before.label) return true;
    const uses = this.uses(id);
    return uses.size !== usedBefore.size || [...uses].some((other) => !usedBefore.has(other));
  }

  /** Names as shown, of deleted cells too: what depended on one can say which is missing. */
  private allNames(): Map<string, string> {
    const touched = [...this.touched];
    this.touched.clear();
    if (this.names && !touched.some(([id, uses]) => this.mayRename(id, uses))) return this.names;
    const live: Named[] = [];
    const names = new Map<string, string>();
    const referred = new Set<string>();
    for (const id of this.replica.cells.keys()) {
      const one = this.namedNow(id);
      if (this.replica.has(id)) {
        live.push(one);
        for (const other of this.uses(id)) referred.add(other);
      } else if (one.name) names.set(id, one.name);
    }
    this.named = new Map(live.map((one) => [one.id, one]));
    this.ids = new Map();
    for (const [id, name] of shownNames(live, (id) => referred.has(id))) {
      names.set(id, name);
      this.ids.set(name, id);
    }
    const before = this.lastNames;
    this.names = names;
    this.lastNames = names;
    // Records hold names: those that mention a name that is not the same any more are built again.
    for (const [id] of this.records) {
      if (names.get(id) !== before.get(id)) this.records.delete(id);
      else
        for (const other of this.uses(id))
          if (names.get(other) !== before.get(other)) this.records.delete(id);
    }
    return names;
  }

  private build(id: string): CellRecord {
    const fields: Array<[string, unknown]> = [];
    for (const [path, value] of withLists(this.replica.fields(id))) {
      if (path === ORDER || path === GONE) continue;
      fields.push([path, typeof value === 'string' && textKind(path) ? this.show(value) : value]);
    }
    const record = unflatten(fields) as unknown as CellRecord;
    record.id = id;
    const name = this.nameOf(id);
    if (name !== undefined) record.name = name;
    if (Array.isArray(record.dismissed)) {
      record.dismissed = record.dismissed.map((d: Dismissal) => ({ ...d, text: this.show(String(d.text)) }));
    }
    // One person took the reading away while another wrote a note to it: the note stays, the reading is blank.
    if (record.measured && record.measured.entry === undefined) record.measured.entry = '';
    for (const output of Object.values(record.outputs ?? {})) {
      if (output.measured && output.measured.entry === undefined) output.measured.entry = '';
    }
    return record;
  }
}
