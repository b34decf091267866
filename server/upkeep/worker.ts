import { parentPort, workerData } from 'node:worker_threads';
import { errorCode } from '../error-code.ts';
import { checkFile, copyDatabase, type HowClosely } from './jobs.ts';

/** One job for a thread of its own. */
export type Job =
  | { readonly do: 'check'; readonly file: string; readonly how: HowClosely }
  | { readonly do: 'copy'; readonly file: string; readonly to: string };

/** What became of a job; an error travels as its parts, since a thread boundary takes its code away. */
export type JobDone =
  | { readonly ok: true; readonly said: string[] }
  | { readonly ok: false; readonly message: string; readonly code: string };

async function run(job: Job): Promise<JobDone> {
  try {
    if (job.do === 'check') return { ok: true, said: checkFile(job.file, job.how) };
    await copyDatabase(job.file, job.to);
    return { ok: true, said: [] };
  } catch (error) {
    const message = error instanceof Error ? error.message : String(error);
    return { ok: false, message, code: errorCode(error) };
  }
}

parentPort?.postMessage(await run(workerData as Job));
