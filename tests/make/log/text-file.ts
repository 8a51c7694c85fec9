import { mkdirSync, writeFileSync } from 'node:fs';
import { dirname } from 'node:path';
import { gzipSync } from 'fflate';
import type { LogFormat } from './log-format.js';

/** Collects lines and writes them in the log's encoding; a gzip file carries no time, so the bytes repeat. */
export class TextFile {
  readonly #path: string;
  readonly #format: Pick<LogFormat, 'lineEnd' | 'encoding' | 'isGzipped'>;
  readonly #parts: string[] = [];

  constructor(path: string, format: Pick<LogFormat, 'lineEnd' | 'encoding' | 'isGzipped'>) {
    this.#path = path;
    this.#format = format;
  }

  line(text: string): void {
    this.#parts.push(text);
  }

  get lines(): number {
    return this.#parts.length;
  }

  close(): void {
    const { lineEnd, encoding, isGzipped } = this.#format;
    const text = this.#parts.join(lineEnd) + lineEnd;
    const bytes =
      encoding === 'latin1'
        ? Buffer.from(text, 'latin1')
        : encoding === 'utf16le'
          ? Buffer.from(`\ufeff${text}`, 'utf16le')
          : Buffer.from(encoding === 'utf8-bom' ? `\ufeff${text}` : text, 'utf8');
    mkdirSync(dirname(this.#path), { recursive: true });
    if (isGzipped) writeFileSync(`${this.#path}.gz`, gzipSync(bytes, { level: 9, mtime: 0 }));
    else writeFileSync(this.#path, bytes);
  }
}
