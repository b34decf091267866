import { WRITTEN_HERE } from './events.ts';
import type { Db } from './open-store.ts';

/**
 * Refuses a second animal of one name or tag on the farm, where it is written at this kiosk.
 *
 * The rule is of the connection: two kiosks may enrol animals of one name apart, and what they told is kept as it was.
 */
export function keepNumbersApart(db: Db): void {
  for (const column of ['name', 'tag']) {
    const taken = `NEW.life = 'present' AND ${WRITTEN_HERE} AND EXISTS (SELECT 1 FROM animals AS other
      WHERE other.${column} = NEW.${column} AND other.life = 'present' AND other.id <> NEW.id)`;
    const refuse = `BEGIN SELECT RAISE(ABORT, 'another animal on the farm has this ${column}'); END`;
    db.exec(
      `CREATE TEMP TRIGGER one_${column}_when_new BEFORE INSERT ON main.animals WHEN ${taken} ${refuse}`,
    );
    db.exec(`CREATE TEMP TRIGGER one_${column}_when_changed BEFORE UPDATE ON main.animals
      WHEN (OLD.${column} IS NOT NEW.${column} OR OLD.life <> 'present') AND ${taken} ${refuse}`);
  }
}
