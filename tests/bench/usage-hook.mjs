// Loaded before a program that is measured: writes what it used to the file that BENCH_USAGE names.
import { writeFileSync } from 'node:fs';

process.on('exit', () => {
  const { user, system } = process.cpuUsage();
  const usage = { cpuS: (user + system) / 1e6, peakMb: process.resourceUsage().maxRSS / 1024 };
  if (process.env.BENCH_USAGE) writeFileSync(process.env.BENCH_USAGE, JSON.stringify(usage));
});
