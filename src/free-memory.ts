import { Session } from 'node:inspector';

/** Less in typed arrays is not worth the time that collecting takes (own choice). */
const WORTH_BYTES = 60e6;

/**
 * Collects garbage where much memory lies in typed arrays, most of which nothing uses any more when this is called. The
 * engine decides by its own heap when to collect and hardly counts what lies outside of it. Small runs do nothing.
 */
export async function freeMemory(): Promise<void> {
  if (process.memoryUsage().arrayBuffers < WORTH_BYTES) return;
  try {
    await collectGarbage();
  } catch {
    // A Node built without its inspector goes on with the memory it has.
  }
}

async function collectGarbage(): Promise<void> {
  const session = new Session();
  session.connect();
  await new Promise<void>((resolve) => session.post('HeapProfiler.collectGarbage', () => resolve()));
  session.disconnect();
}
