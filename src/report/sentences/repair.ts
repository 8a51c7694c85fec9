/** What a repair note says; a repair that only the log shows has no words of its own. */
export function repairText(done: string, found: string): string {
  const said = [done, found].map((text) => text.trim()).filter((text) => text !== '');
  return said.length > 0 ? said.join('; found: ') : 'the fault ends here as a repair would end it';
}
