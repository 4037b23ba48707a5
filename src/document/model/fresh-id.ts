const ALPHABET = '0123456789abcdefghijklmnopqrstuvwxyz';

/** Random, because two people add cells at the same time; eight characters, because people read files. */
export function freshId(taken: (id: string) => boolean): string {
  for (;;) {
    const bytes = crypto.getRandomValues(new Uint8Array(8));
    const id = `c${Array.from(bytes, (b) => ALPHABET[b % ALPHABET.length]).join('')}`;
    if (!taken(id)) return id;
  }
}
