import { runRestore } from './restore.ts';

process.exitCode = runRestore(process.argv[3]);
