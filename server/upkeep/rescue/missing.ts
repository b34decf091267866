import type { Db } from '../../store/open-store.ts';
import { TreatmentRecord } from '../../store/treatment-record.ts';

/**
 * Makes the animals and jugs anew that treatments name and that could not be read: a treatment's record holds what they
 * were when it was given. Answers a sentence for each.
 */
export function makeMissing(db: Db): string[] {
  const made: string[] = [];
  const orphans = db.prepare<[], { animal_id: string; jug_id: string; record: string }>(
    `SELECT animal_id, jug_id, record FROM treatments
     WHERE NOT EXISTS (SELECT 1 FROM animals WHERE id = animal_id) OR NOT EXISTS (SELECT 1 FROM jugs WHERE id = jug_id)
     ORDER BY sequence DESC`,
  );
  const known = (table: 'animals' | 'jugs', id: string) =>
    db.prepare(`SELECT 1 FROM ${table} WHERE id = ?`).get(id) !== undefined;
  for (const { animal_id, jug_id, record } of orphans.all()) {
    const { animal, jug } = TreatmentRecord.parse(JSON.parse(record)).offer;
    if (!known('animals', animal_id)) {
      const free = db.prepare("SELECT 1 FROM animals WHERE name = ? AND life = 'present'").get(animal.name);
      const name = free === undefined ? animal.name : `${animal.name} (found again)`;
      const worn = db.prepare("SELECT 1 FROM animals WHERE tag = ? AND life = 'present'").get(animal.tag);
      db.prepare(
        'INSERT INTO animals (id, name, species, class, tag, in_milk) VALUES (?, ?, ?, ?, ?, ?)',
      ).run(
        animal_id,
        name,
        animal.species,
        animal.class,
        worn === undefined ? animal.tag : null,
        animal.inMilk ? 1 : 0,
      );
      made.push(`animal ${name} was made anew from a treatment: look at its page`);
    }
    if (!known('jugs', jug_id)) {
      const number = (db.prepare('SELECT max(number) FROM jugs').pluck().get() as number | null) ?? 0;
      const taken = db.prepare('SELECT 1 FROM jugs WHERE number = ?').get(jug.number) !== undefined;
      db.prepare(
        `INSERT INTO jugs (id, number, medicine_id, packet_id, strength_mg_per_ml, strength_uncertainty, volume_ml,
           mixed_at_ms, use_by_ms, mixed_by, clock_trusted, discarded_at_ms)
         VALUES (?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?)`,
      ).run(
        jug_id,
        taken ? number + 1 : jug.number,
        jug.medicineId,
        jug.packetId,
        jug.strength.value,
        jug.relative,
        jug.volume.value,
        Math.round(jug.mixedAtMs),
        Math.round(jug.useByMs),
        jug.by,
        jug.clockTrusted ? 1 : 0,
        // Nobody knows whether it was poured away: it is not offered again.
        Math.round(jug.mixedAtMs),
      );
      made.push(`jug ${jug.number} was made anew from a treatment, as poured away`);
    }
  }
  return made;
}
