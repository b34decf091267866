import { qrPath } from '../../../server/print/qr-code.ts';
import type { DeviceRight, NetworkView, PairedDeviceView, PairingCode } from '../../../shared/network.ts';
import type { KioskState } from '../../../shared/state.ts';
import { BASE } from './base-state.ts';
import { NETWORK_OFF } from './network-state.ts';
import type { Scene } from './scene.ts';

const ADDRESS = 'https://192.168.1.20:4181';
const ON: NetworkView = {
  ...NETWORK_OFF,
  listening: 'on',
  address: ADDRESS,
  fingerprint: Array.from({ length: 32 }, (_, i) => (i * 37 + 11).toString(16).slice(-2).padStart(2, '0'))
    .join(':')
    .toUpperCase(),
};
const device = (
  number: number,
  right: DeviceRight,
  more: Partial<PairedDeviceView> = {},
): PairedDeviceView => ({
  id: `d${number}`,
  kind: 'phone',
  number,
  right,
  pairedAt: '2026-04-02T10:00:00Z',
  lastSeenAt: '2026-04-14T14:01:00Z',
  open: false,
  person: null,
  ...more,
});
const DEVICES = [
  device(1, 'act', { open: true, person: 'Robin' }),
  device(2, 'follow', { kind: 'tablet', lastSeenAt: '2026-04-11T08:15:00Z' }),
  device(4, 'set-up', { kind: 'computer', lastSeenAt: null }),
];
const CODE: PairingCode = {
  code: '40718265',
  address: ADDRESS,
  qr: qrPath(`${ADDRESS}/#pair/40718265`),
};
const NO_CODE = { '/api/network/pairing': null };
const PAIRING: NetworkView = { ...ON, pairing: { right: 'act', endsAt: '2026-04-14T14:05:00Z' } };

function at(network: NetworkView): KioskState {
  return { ...BASE, network };
}

/** Other devices, at the Shed of the kiosk. */
export const PHONE_SCENES: readonly Scene[] = [
  { name: 'phones-off', place: 'shed/phones', state: at(NETWORK_OFF) },
  { name: 'phones-none', place: 'shed/phones', state: at(ON) },
  {
    name: 'phones-trouble',
    place: 'shed/phones',
    state: at({ ...NETWORK_OFF, listening: 'trouble', trouble: 'file-unreadable' }),
  },
  { name: 'phones', place: 'shed/phones', state: at({ ...ON, devices: DEVICES }) },
  { name: 'phones-one', place: 'shed/phones/device/d1', state: at({ ...ON, devices: DEVICES }) },
  { name: 'phones-right', place: 'shed/phones/pair', state: at(ON) },
  {
    name: 'phones-code',
    place: 'shed/phones/pair/code',
    state: at(PAIRING),
    http: { '/api/network/pairing': CODE },
  },
  {
    name: 'phones-tried',
    place: 'shed/phones/pair/code',
    state: at({ ...ON, paired: 'too-many-tries' }),
    http: NO_CODE,
  },
  {
    name: 'phones-paired',
    place: 'shed/phones/pair/code',
    state: at({ ...ON, paired: 'paired' }),
    http: NO_CODE,
  },
  { name: 'phones-pins', place: 'shed/phones/pins', state: at({ ...ON, withPin: ['Robin'] }) },
  {
    name: 'phones-pin',
    place: 'shed/phones/pins/Robin',
    state: at({ ...ON, withPin: ['Robin'] }),
    taps: ['key-2', 'key-5', 'key-8'],
  },
];

const follow = { kind: 'device', right: 'follow', person: null } as const;
const act = { kind: 'device', right: 'act', person: null } as const;
const works = { kind: 'device', right: 'act', person: 'Robin' } as const;
const WITH_PIN = at({ ...ON, withPin: ['Robin', 'Sam'] });

/** The page on a phone itself: to be looked at in a phone's size. */
export const ON_PHONE_SCENES: readonly Scene[] = [
  { name: 'phone-pair', place: 'pair/40718265', state: BASE, visitor: { kind: 'stranger' } },
  { name: 'phone-code', place: 'home', state: BASE, visitor: { kind: 'stranger' } },
  { name: 'phone-follows', place: 'home', state: WITH_PIN, visitor: follow },
  { name: 'phone-may-act', place: 'platform', state: WITH_PIN, visitor: act },
  { name: 'phone-who', place: 'home', state: WITH_PIN, visitor: act, taps: ['follows'] },
  {
    name: 'phone-pin',
    place: 'home',
    state: WITH_PIN,
    visitor: act,
    taps: ['follows', 'person-tile', 'key-2', 'key-5'],
  },
  { name: 'phone-works', place: 'home', state: WITH_PIN, visitor: works },
];
