/** What a command leaves for the exit code; only cli.ts turns it into one. */
export interface RunResult {
  /** Set when `--fail-on` was given and a zone reached that status. */
  needsAttention: boolean;
}
