import { expect, test } from 'vitest';
import { sticksIn } from '../../../server/upkeep/sticks.ts';

const MOUNTS = `/dev/mmcblk0p2 / ext4 rw,noatime 0 0
tmpfs /run tmpfs rw,nosuid 0 0
/dev/sda1 /media/kiosk/BACK\\040UP vfat rw,relatime 0 0
/dev/sdb1 /run/media/kiosk/stick exfat rw 0 0
/dev/sdc1 /media/locked vfat ro,relatime 0 0
/dev/sdd1 /mnt/disk ext4 rw 0 0
tmpfs /media/none tmpfs rw 0 0
`;

test('a stick is what is plugged in and can be written to', () => {
  expect(sticksIn(MOUNTS)).toEqual(['/media/kiosk/BACK UP', '/run/media/kiosk/stick']);
  expect(sticksIn('')).toEqual([]);
});
