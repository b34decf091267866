/** An end that takes longer is cut short: what was acknowledged is on the disk, and the board waits to be switched off. */
const LONGEST_END_MS = 8000;

/**
 * Ends this process by the signal that asked for it, once `stop` is done or has failed, and after 8 s whatever it does.
 *
 * Nothing may listen to the signal any more: its own action ends the process at once, while `process.exit` waits for
 * every thread, and a check of the database is a single call that cannot be broken off.
 */
export function endBy(signal: NodeJS.Signals, stop: () => Promise<void>): void {
  const leave = () => void process.kill(process.pid, signal);
  setTimeout(leave, LONGEST_END_MS);
  stop().then(leave, leave);
}
