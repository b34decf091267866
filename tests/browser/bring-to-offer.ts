import type { KioskProcess } from '../process/kiosk-process.ts';

/** How often a goat is led on before the next one is. */
const TRIES = 3;

/**
 * Leads goats of the demo farm onto the platform, one after the other, until a dose is on offer; answers with the id of the goat.
 *
 * A goat that was dosed already is passed by; `null` when none is left.
 */
export async function bringToOffer(server: KioskProcess): Promise<string | null> {
  const { jugs, animals, shed } = await server.state();
  const rule = shed.regimens.find(
    ({ medicine, species }) => medicine === 'Fenbendazole' && species === 'goat',
  );
  const jug = jugs.find(({ medicine, life }) => medicine === 'Fenbendazole' && life === 'in-life');
  const jugId = jug?.id ?? '';
  await server.send({
    type: 'approve',
    regimenId: rule?.id ?? '',
    direction: 'veterinarian',
    meatHours: 240,
    milkHours: 96,
  });
  const dosed = new Set((await server.treatments()).map(({ animal }) => animal));
  const goats = animals.filter(
    ({ id, species, inMilk, class: kind }) =>
      species === 'goat' && !inMilk && kind === 'female' && !dosed.has(id),
  );
  for (const { id, lastWeightGrams } of goats) {
    for (let tries = 0; tries < TRIES; tries += 1) {
      await server.tray({ do: 'walk-off' });
      await server.until((s) => s.platform.verdict === 'empty', 'an empty platform');
      await server.send({ type: 'take-jug', jugId });
      await server.send({ type: 'prove-jug', jugId, deliberate: true });
      await server.tray({ do: 'present-tag', animalId: id });
      await server.tray({ do: 'lead-on', animalId: id, grams: lastWeightGrams, grade: 'calm' });
      const asked = await server.until(
        (s) => s.offer !== null || s.round.step === 'cautions' || s.platform.verdict === 'not-zeroed',
        'weighed',
      );
      // A kiosk that was kept from its work for a second did not see the platform empty: the goat steps on again.
      if (asked.platform.verdict === 'not-zeroed') continue;
      for (const { code, strength } of asked.round.step === 'cautions' ? asked.round.cautions : [])
        if (strength === 'ask') await server.send({ type: 'accept', code });
      const { offer } = await server.state();
      if (offer?.animal === id) return id;
      break;
    }
  }
  return null;
}
