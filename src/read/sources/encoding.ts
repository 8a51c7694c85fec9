import { isUtf8 } from 'node:buffer';
import type { LogFile } from '../../model/log-file.js';
import type { ByteSource } from './byte-source.js';

export type Encoding = LogFile['encoding'];

/**
 * Tells the encoding from the first bytes of a file: a byte order mark, else the places of zero bytes (UTF-16),
 * else UTF-8 where the bytes are valid UTF-8, else Windows-1252.
 *
 * @param head First bytes; a character cut off at their end does not count against UTF-8.
 * @returns The encoding and how many bytes of mark to skip.
 */
export function detectEncoding(head: Buffer): { encoding: Encoding; markBytes: number } {
  if (head[0] === 0xef && head[1] === 0xbb && head[2] === 0xbf) return { encoding: 'utf-8', markBytes: 3 };
  if (head[0] === 0xff && head[1] === 0xfe) return { encoding: 'utf-16le', markBytes: 2 };
  if (head[0] === 0xfe && head[1] === 0xff) return { encoding: 'utf-16be', markBytes: 2 };
  const wide = unmarkedUtf16(head);
  if (wide) return { encoding: wide, markBytes: 0 };
  return { encoding: beginsAsUtf8(head) ? 'utf-8' : 'windows-1252', markBytes: 0 };
}

/** Western text in UTF-16 has a zero in every second place. */
function unmarkedUtf16(head: Buffer): 'utf-16le' | 'utf-16be' | null {
  const length = Math.min(head.length, 1024) & ~1;
  if (length < 16) return null;
  let even = 0;
  let odd = 0;
  for (let i = 0; i < length; i += 2) {
    if (head[i] === 0) even++;
    if (head[i + 1] === 0) odd++;
  }
  const most = 0.4 * length; // of length / 2 places: four in five
  if (odd > most && even * 8 < odd) return 'utf-16le';
  if (even > most && odd * 8 < even) return 'utf-16be';
  return null;
}

/** A character that is cut off at the end does not count. */
function beginsAsUtf8(head: Buffer): boolean {
  try {
    new TextDecoder('utf-8', { fatal: true }).decode(head, { stream: true });
    return true;
  } catch {
    return false;
  }
}

/** True for bytes that no text has: many control characters among the first ones. */
export function looksBinary(head: Buffer): boolean {
  if (detectEncoding(head).encoding.startsWith('utf-16')) return false;
  const length = Math.min(head.length, 8192);
  let control = 0;
  for (let i = 0; i < length; i++) {
    const byte = head[i]!;
    if (byte < 9 || (byte > 13 && byte < 32 && byte !== 27)) control++;
  }
  return control > 0.05 * length; // a text with a few stray bytes is still a text
}

/** Decodes bytes of a file that was not UTF-16 (such files are turned into UTF-8 while they are read). */
export function decodeBytes(bytes: Buffer, encoding: Encoding): string {
  if (encoding !== 'windows-1252') return bytes.toString('utf8');
  return new TextDecoder('windows-1252').decode(bytes);
}

/** As {@link decodeBytes} for a whole line: one that is no UTF-8, in a file that begins so, was written by another program. */
export function decodeLine(bytes: Buffer, encoding: Encoding): string {
  const text = decodeBytes(bytes, encoding);
  return encoding === 'utf-8' && text.includes('\ufffd') && !isUtf8(bytes) ? decodeBytes(bytes, 'windows-1252') : text;
}

/** Turns a UTF-16 source into a UTF-8 source; others pass unchanged. The mark is left for the reader to skip. */
export function asAsciiCompatible(source: ByteSource, encoding: Encoding): ByteSource {
  if (!encoding.startsWith('utf-16')) return source;
  const decoder = new TextDecoder(encoding, { ignoreBOM: true });
  const raw = Buffer.alloc(128 * 1024);
  let rest: Buffer = Buffer.alloc(0);
  let isDone = false;
  return {
    async fill(target, at) {
      while (rest.length === 0 && !isDone) {
        const count = await source.fill(raw, 0);
        isDone = count === 0;
        rest = Buffer.from(decoder.decode(raw.subarray(0, count), { stream: !isDone }), 'utf8');
      }
      const copied = rest.copy(target, at);
      rest = rest.subarray(copied);
      return copied;
    },
    close: () => source.close(),
  };
}
