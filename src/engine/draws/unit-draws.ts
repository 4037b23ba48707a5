import { type Shape, unitFiller } from './distributions.ts';
import { GROUP, Stream } from './stream.ts';

/** Groups made at a time. */
const CHUNK = 20;
/** Chunks kept in all: 48 MB of draws, all those of sixty sources. */
const MOST_KEPT = 1200;

interface Source {
  chunks: (Float32Array | undefined)[];
  turn: number;
}

/** By stream and distribution, the one that was asked for longest ago first. */
const sources = new Map<string, Source>();
let kept = 0;
let turn = 0;

/** From here on what was asked for before may be let go. */
export const beginTurn = (): void => {
  turn++;
};

/**
 * Draws of a source by its distribution alone, group by group. They are the same at every edit and in every trial of the
 * sheet, and take longer to make than all that is worked out from them, so they are kept; what comes out is the same
 * whether they were or not.
 */
export function unitDraws(key: string, seed: number, shape: Shape): (group: number) => Float32Array {
  const name = `${seed} ${shape.distribution} ${shape.dof} ${key}`;
  const source = sources.get(name) ?? { chunks: [], turn };
  source.turn = turn;
  sources.delete(name);
  sources.set(name, source);
  const stream = new Stream(key, seed);
  const fill = unitFiller(shape);
  const make = (group: number, block: Float32Array): Float32Array => {
    stream.begin(group);
    fill(block, GROUP, stream);
    return block;
  };
  let spare: Float32Array | undefined;
  return (group) => {
    const at = Math.floor(group / CHUNK);
    const from = (group - at * CHUNK) * GROUP;
    let chunk = source.chunks[at];
    if (!chunk && sources.get(name) === source && isRoom()) {
      chunk = new Float32Array(CHUNK * GROUP);
      for (let i = 0; i < CHUNK; i++) make(at * CHUNK + i, chunk.subarray(i * GROUP, (i + 1) * GROUP));
      source.chunks[at] = chunk;
      kept++;
    }
    if (chunk) return chunk.subarray(from, from + GROUP);
    spare ??= new Float32Array(GROUP);
    return make(group, spare);
  };
}

/** Makes room, where it is taken by what is not drawn from now. */
function isRoom(): boolean {
  for (const [name, source] of sources) {
    if (kept < MOST_KEPT) return true;
    if (source.turn === turn) return false;
    sources.delete(name);
    kept -= source.chunks.filter(Boolean).length;
  }
  return kept < MOST_KEPT;
}
