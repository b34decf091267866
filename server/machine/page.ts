import { statfsSync, statSync } from 'node:fs';
import { freemem, totalmem, uptime } from 'node:os';
import type { MachinePage } from '../../shared/machine.ts';
import type { Machine } from './machine.ts';

function sizeOf(file: string): number {
  return statSync(file, { throwIfNoEntry: false })?.size ?? 0;
}

function disk(records: string | null): MachinePage['disk'] {
  if (records === null) return { free: null, total: null, records: null };
  const { bavail, blocks, bsize } = statfsSync(records);
  return {
    free: bavail * bsize,
    total: blocks * bsize,
    records: sizeOf(records) + sizeOf(`${records}-wal`),
  };
}

/** Tells of the board and of the kiosk on it. `records` is the file of the records, or `null` where none are kept. */
export function machinePage(machine: Machine, records: string | null, version: string): MachinePage {
  const { celsius, limitCelsius } = machine.senses();
  return {
    ...machine.view(),
    celsius,
    limitCelsius,
    boardSeconds: Math.round(uptime()),
    kioskSeconds: Math.round(process.uptime()),
    memory: { kiosk: process.memoryUsage.rss(), free: freemem(), total: totalmem() },
    disk: disk(records),
    version,
    node: process.versions.node,
  };
}
