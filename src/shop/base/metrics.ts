/** What the server counts, told in the text format of OpenMetrics. */

const COUNTERS = {
  sockets_opened: 'WebSockets that were opened.',
  updates_taken: 'Updates that were checked, stored and passed on.',
  updates_bytes: 'Bytes of those.',
  updates_refused: 'Updates that were refused.',
  keys_refused: 'Keys that were refused.',
  sockets_refused: 'WebSockets that were closed for what they sent or did not send.',
  presence_dropped: 'States of presence that were not passed on.',
  paused: 'Times a socket was read no further because of its rate or the backlog.',
  commits: 'Transactions of the store.',
  commits_failed: 'Transactions of the store that failed; they are tried again.',
  lost_values: 'Values written at the same moment as another that did not remain.',
} as const;

export type Counter = keyof typeof COUNTERS;

const GAUGES = {
  sockets: 'WebSockets open now.',
  documents: 'Documents in memory.',
  connections: 'Connections to documents.',
  waiting_updates: 'Updates not yet stored.',
  resident_bytes: 'Memory of the process.',
} as const;

export type Gauge = keyof typeof GAUGES;

export class Metrics {
  private readonly counts = new Map<Counter, number>();

  add(counter: Counter, by = 1): void {
    this.counts.set(counter, (this.counts.get(counter) ?? 0) + by);
  }

  of(counter: Counter): number {
    return this.counts.get(counter) ?? 0;
  }

  text(now: Record<Gauge, number>): string {
    const lines: string[] = [];
    for (const [name, help] of Object.entries(COUNTERS))
      lines.push(
        `# TYPE fitwright_${name} counter`,
        `# HELP fitwright_${name} ${help}`,
        `fitwright_${name}_total ${this.of(name as Counter)}`,
      );
    for (const [name, help] of Object.entries(GAUGES))
      lines.push(
        `# TYPE fitwright_${name} gauge`,
        `# HELP fitwright_${name} ${help}`,
        `fitwright_${name} ${now[name as Gauge]}`,
      );
    return `${lines.join('\n')}\n# EOF\n`;
  }
}
