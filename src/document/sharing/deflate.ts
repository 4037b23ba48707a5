/** Packing by DEFLATE (RFC 1951), which browsers and Node bring along. */

async function joined(stream: ReadableStream<Uint8Array>, limit = Number.POSITIVE_INFINITY) {
  const reader = stream.getReader();
  const pieces: Uint8Array[] = [];
  let length = 0;
  for (;;) {
    const { done, value } = await reader.read();
    if (done) break;
    length += value.length;
    if (length > limit) {
      await reader.cancel().catch(() => {});
      return undefined;
    }
    pieces.push(value);
  }
  const bytes = new Uint8Array(length);
  let at = 0;
  for (const piece of pieces) {
    bytes.set(piece, at);
    at += piece.length;
  }
  return bytes;
}

const streamOf = (bytes: Uint8Array<ArrayBuffer>) =>
  new ReadableStream<Uint8Array<ArrayBuffer>>({
    start(controller) {
      controller.enqueue(bytes);
      controller.close();
    },
  });

export async function deflate(bytes: Uint8Array<ArrayBuffer>): Promise<Uint8Array> {
  return (await joined(streamOf(bytes).pipeThrough(new CompressionStream('deflate-raw'))))!;
}

/**
 * Unpacks as far as `limit` bytes and not one piece further: what a few bytes can be blown up to never comes into
 * memory.
 */
export async function inflate(
  bytes: Uint8Array<ArrayBuffer>,
  limit: number,
): Promise<Uint8Array | 'too big' | 'damaged'> {
  try {
    const plain = await joined(streamOf(bytes).pipeThrough(new DecompressionStream('deflate-raw')), limit);
    return plain ?? 'too big';
  } catch {
    return 'damaged';
  }
}
