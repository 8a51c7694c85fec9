/** Meanings by POSIX.1-2017, section 2.3 Error Numbers. */
const reasons: Readonly<Record<string, string>> = {
  ENOSPC: 'the disk is full',
  EDQUOT: 'the quota on that disk is used up',
  EFBIG: 'files may not grow that large here',
  EROFS: 'that disk can only be read',
  EACCES: 'permission denied',
  EPERM: 'permission denied',
  ENOTDIR: 'a part of its path is a file, not a folder',
  EEXIST: 'a part of its path is a file, not a folder',
  EISDIR: 'it is a folder',
  ENAMETOOLONG: 'its name is too long',
};

/** What a system or a library says of an error, in words where they are known, without its code and the path. */
export function reasonOf(error: unknown): string {
  if (!(error instanceof Error)) return String(error);
  const { code } = error as NodeJS.ErrnoException;
  return reasons[code ?? ''] ?? error.message.split(',')[0]!.replace(/^[A-Z]+: /, '');
}
