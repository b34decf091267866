import type { OfficeSaid, OfficesView } from '../../shared/farm.ts';

/** Where the offices of the hub are told, and said to. */
export const OFFICES_PATH = '/api/farm/offices';

/** Has the hub let an office read this farm, or no more; answers how all stand then, `null` where it was not done. */
export async function sayToOffice(say: OfficeSaid): Promise<OfficesView | null> {
  try {
    const response = await fetch(OFFICES_PATH, {
      method: 'POST',
      headers: { 'content-type': 'application/json' },
      body: JSON.stringify(say),
    });
    return response.ok ? ((await response.json()) as OfficesView) : null;
  } catch {
    return null;
  }
}
