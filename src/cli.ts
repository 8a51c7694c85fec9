#!/usr/bin/env node
import { Command } from 'commander';
import { registerCommands } from './commands/index.js';
import { reportFailure } from './commands/failure.js';
import type { RunResult } from './commands/run-result.js';

const result: RunResult = { needsAttention: false };
const program = new Command('looselead');
registerCommands(program, result);
try {
  await program.parseAsync();
  if (result.needsAttention) process.exitCode = 1;
} catch (error) {
  process.exitCode = reportFailure(error);
}
