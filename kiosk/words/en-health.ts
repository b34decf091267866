import type { MachineView } from '../../shared/machine.ts';

/** English words of how the board under the kiosk is. */
export const enHealth = {
  door: 'Health',
  title: 'The board',
  loading: 'Asking the board…',
  failed: 'The board could not be asked. It is asked again.',
  supply: 'Supply',
  supplied: {
    good: 'good',
    'was-low': 'was too low since the start',
    low: 'too low now',
    unknown: 'this board does not tell',
  } satisfies Record<MachineView['supply'], string>,
  remedy: {
    supply: 'Use the supply made for this board, and a short cable. A low supply can spoil the card.',
    hot: 'The board is so hot that it slows down. Give it shade and air.',
  },
  heat: 'Temperature',
  /** A temperature, and from which on the board slows down. */
  degrees: (now: string, limit: string | null) =>
    limit === null ? `${now} °C` : `${now} °C, slows down at ${limit} °C`,
  unmeasured: 'not measured',
  card: 'Card',
  room: (free: string, total: string) => `${free} GB free of ${total} GB`,
  records: 'Records',
  megabytes: (size: string) => `${size} MB`,
  noRecords: 'none are kept',
  running: 'Running',
  /** Since when the program runs, and since when the board does. */
  since: (kiosk: string, board: string) => `kiosk ${kiosk}, board ${board}`,
  release: 'Release',
  /** The release in use, and the Node it runs on. */
  version: (version: string, node: string) => `${version} (Node ${node})`,
};
