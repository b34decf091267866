/** How a running kiosk stands. */
export interface Vitals {
  readonly residentMb: number;
  readonly descriptors: number;
  /** How late the event loop was at most of its turns since this was last asked, in milliseconds: the 99th of 100. */
  readonly loopDelayMs: number;
}

/** Asks a running kiosk for its vitals; the first question begins the measuring of the loop. Rejects where one is missing. */
export async function vitalsOf(base: string): Promise<Vitals> {
  const text = await (await fetch(`${base}/api/metrics`)).text();
  const figure = (name: string): number => {
    const found = new RegExp(`^${name} (\\S+)$`, 'm').exec(text)?.[1];
    if (found === undefined) throw new Error(`the kiosk tells no ${name}`);
    return Number(found);
  };
  return {
    residentMb: figure('process_resident_memory_bytes') / 2 ** 20,
    descriptors: figure('process_open_fds'),
    loopDelayMs: figure('nodejs_eventloop_lag_p99_seconds') * 1000,
  };
}
