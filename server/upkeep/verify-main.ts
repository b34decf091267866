import { verify } from './verify.ts';

process.exitCode = verify(process.argv[3]);
