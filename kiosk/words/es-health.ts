import type { enHealth } from './en-health.ts';

/** Spanish words of how the board under the kiosk is. */
export const esHealth: typeof enHealth = {
  door: 'Estado',
  title: 'La placa',
  loading: 'Preguntando a la placa…',
  failed: 'No se pudo preguntar a la placa. Se vuelve a intentar.',
  supply: 'Corriente',
  supplied: {
    good: 'buena',
    'was-low': 'fue demasiado baja desde el arranque',
    low: 'demasiado baja ahora',
    unknown: 'esta placa no lo dice',
  },
  remedy: {
    supply:
      'Use la fuente propia de esta placa y un cable corto. Una corriente baja puede estropear la tarjeta.',
    hot: 'La placa está tan caliente que va más lenta. Déle sombra y aire.',
  },
  heat: 'Temperatura',
  degrees: (now, limit) => (limit === null ? `${now} °C` : `${now} °C, va más lenta desde ${limit} °C`),
  unmeasured: 'no se mide',
  card: 'Tarjeta',
  room: (free, total) => `${free} GB libres de ${total} GB`,
  records: 'Registros',
  megabytes: (size) => `${size} MB`,
  noRecords: 'no se guardan',
  running: 'En marcha',
  since: (kiosk, board) => `el puesto, ${kiosk}; la placa, ${board}`,
  release: 'Versión',
  version: (version, node) => `${version} (Node ${node})`,
};
