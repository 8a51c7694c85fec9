/** Temperature logs first, then the lists, each by name: day-2 before day-10. They come in the order in which they were read. */
export function filesInOrder<F extends { readonly file: string; readonly kind: string }>(files: readonly F[]): F[] {
  const rank = ({ kind }: F): number => (kind === 'temperature' ? 0 : 1);
  return [...files].sort((a, b) => rank(a) - rank(b) || a.file.localeCompare(b.file, 'en', { numeric: true }));
}
