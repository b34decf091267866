import { Worker } from 'node:worker_threads';
import type { UpkeepJobs } from './jobs.ts';
import type { Job, JobDone } from './worker.ts';

/** Jobs in threads of their own, so that the kiosk answers while they run. Works from the built program only. */
export function jobsInThreads(): UpkeepJobs {
  return {
    check: (file, how) => inThread({ do: 'check', file, how }),
    copy: async (file, to) => void (await inThread({ do: 'copy', file, to })),
  };
}

function inThread(job: Job): Promise<string[]> {
  return new Promise((resolve, reject) => {
    const worker = new Worker(new URL('./upkeep/worker.js', import.meta.url), { workerData: job });
    // A job under way must not keep the kiosk from ending.
    worker.unref();
    worker.once('message', (done: JobDone) => {
      if (done.ok) resolve(done.said);
      else reject(Object.assign(new Error(done.message), { code: done.code }));
    });
    worker.once('error', reject);
    worker.once('exit', () => reject(new Error('the job ended without an answer')));
  });
}
