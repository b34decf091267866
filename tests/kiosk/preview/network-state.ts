import type { NetworkView } from '../../../shared/network.ts';

/** Nobody but the board. */
export const NETWORK_OFF: NetworkView = {
  listening: 'off',
  trouble: null,
  setByFile: false,
  address: null,
  fingerprint: null,
  pairing: null,
  paired: null,
  devices: [],
  withPin: [],
};
