#!/usr/bin/env node
import { Command } from 'commander';
import { guardOutput } from './commands/guard-output.js';
import { registerCommands } from './commands/index.js';
import { reportFailure } from './commands/failure.js';
import type { RunResult } from './commands/run-result.js';

guardOutput(() => (process.exitCode = 2));
const result: RunResult = { needsAttention: false };
const program = new Command('looselead');
registerCommands(program, result);
try {
  await program.parseAsync();
  if (result.needsAttention) process.exitCode ??= 1;
} catch (error) {
  process.exitCode = reportFailure(error) || process.exitCode || 0;
}
