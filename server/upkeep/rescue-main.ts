import { runRescue } from './rescue/rescue.ts';

process.exitCode = runRescue(process.argv[3], process.argv[4]);
