import type { Stats } from 'node:fs';
import { open, realpath, rename, stat, unlink, writeFile, type FileHandle } from 'node:fs/promises';
import { dirname } from 'node:path';
import { makeFolder } from './make-folder.js';
import { LogProblem } from '../model/problem.js';
import { reasonOf } from '../model/reason-of.js';
import { removeLeftovers } from './remove-leftovers.js';
import { temporaryNameOf } from './temporary-name.js';

/** What a file shall hold; in pieces where the whole would be large. */
export type FileContent = string | Uint8Array | Iterable<string>;

/** A file to be written, with all that it shall hold. */
export interface WholeFile {
  readonly file: string;
  readonly content: FileContent;
}

/** A file whose content lies on the disk already, under another name; null for what is no file, such as /dev/null. */
interface Prepared {
  readonly target: string;
  readonly temporary: string | null;
}

/**
 * Writes files so that a reader, or a run killed at any moment, finds the old one or the new one, never a part. All are
 * first written and flushed under temporary names; only when all of them lie on the disk are they renamed, so a disk
 * that fills up on the second file leaves the first as it was. This is the only way the program writes files.
 *
 * Folders that are missing are made. A link is followed; what is neither file nor folder is written to as it is.
 *
 * @throws LogProblem `write-failed`.
 */
export async function writeWhole(...files: readonly WholeFile[]): Promise<void> {
  const prepared: Prepared[] = [];
  try {
    for (const file of files) prepared.push(await prepare(file));
    for (const one of prepared) await putInPlace(one);
  } finally {
    // What was renamed is no longer there, so this touches only what a failure left.
    for (const { temporary } of prepared) if (temporary !== null) await unlink(temporary).catch(() => undefined);
  }
}

async function prepare({ file, content }: WholeFile): Promise<Prepared> {
  try {
    await makeFolder(dirname(file));
    const target = await realpath(file).catch(() => file);
    const there = await stat(target).catch(() => null);
    if (there && !there.isFile()) {
      await writeFile(target, content); // a rename would put a file in the place of the device
      return { target, temporary: null };
    }
    await removeLeftovers(dirname(target));
    return { target, temporary: await writeBeside(target, content, there) };
  } catch (error) {
    throw writeFailed(file, error);
  }
}

async function writeBeside(target: string, content: FileContent, earlier: Stats | null): Promise<string> {
  const temporary = temporaryNameOf(target);
  const handle = await open(temporary, 'wx');
  try {
    await writeFile(handle, content); // goes on after a short write, so a full disk is an error and not a short file
    if (earlier) await keepRights(handle, earlier);
    await handle.sync();
    await handle.close();
    return temporary;
  } catch (error) {
    await handle.close().catch(() => undefined);
    await unlink(temporary).catch(() => undefined);
    throw error;
  }
}

/** The new file may be read by whom the earlier one could; only its owner or root may hand a file to somebody. */
async function keepRights(handle: FileHandle, { mode, uid, gid }: Stats): Promise<void> {
  await handle.chown(uid, gid).catch(() => undefined);
  await handle.chmod(mode & 0o777).catch(() => undefined);
}

async function putInPlace({ target, temporary }: Prepared): Promise<void> {
  if (temporary === null) return;
  try {
    await rename(temporary, target);
    await flushFolder(dirname(target));
  } catch (error) {
    throw writeFailed(target, error);
  }
}

/** Makes the new name last through a power cut. Windows has no such call and needs none. */
async function flushFolder(folder: string): Promise<void> {
  const handle = await open(folder, 'r').catch(() => null);
  await handle?.sync().catch(() => undefined);
  await handle?.close();
}

function writeFailed(file: string, cause: unknown): LogProblem {
  return new LogProblem(
    'write-failed',
    { file },
    `It could not be written (${reasonOf(cause)}).`,
    'Free space or choose another place, and run again; what was there before is unchanged.',
    { cause },
  );
}
