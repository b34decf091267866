import type { Moment } from '../../core/moment.ts';

/** Wall time as the wire writes it: RFC 3339, UTC. */
export function rfc3339(wallMs: number): string {
  return new Date(wallMs).toISOString();
}

/** The wall time of an instant known by uptime. */
export function atUptime(uptimeMs: number, now: Moment): string {
  return rfc3339(now.wallMs + (uptimeMs - now.uptimeMs));
}
