/** A web stream over chunks that are made one by one: nothing is read ahead of the reader. */
export function streamOf(chunks: Iterable<Uint8Array> | AsyncIterable<Uint8Array>): ReadableStream<Uint8Array> {
  const source = Symbol.asyncIterator in chunks ? chunks[Symbol.asyncIterator]() : chunks[Symbol.iterator]();
  return new ReadableStream<Uint8Array>(
    {
      async pull(controller) {
        const next = await source.next();
        if (next.done === true) controller.close();
        else controller.enqueue(next.value);
      },
      async cancel() {
        await source.return?.();
      },
    },
    { highWaterMark: 0 },
  );
}

/** The chunks of a web stream. Leaving the loop early cancels the stream. */
export async function* chunksOf(stream: ReadableStream<Uint8Array>): AsyncGenerator<Uint8Array> {
  const reader = stream.getReader();
  let ended = false;
  try {
    for (;;) {
      const { done, value } = await reader.read();
      if (done) {
        ended = true;
        return;
      }
      yield value;
    }
  } finally {
    if (!ended) await reader.cancel().catch(() => undefined);
  }
}
