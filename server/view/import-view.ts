import type { HerdPreview } from '../../core/herd-file/preview.ts';
import type { ImportView } from '../../shared/herd-file.ts';
import type { BarnContext } from '../barn/barn-context.ts';
import type { FileSayings } from '../herd/herd-file.ts';

/** The reading of a herd file as HTTP tells it, with `count` faults beginning at `from`. */
export function importView({ herdFile, memory }: BarnContext, from: number, count: number): ImportView {
  const stage = herdFile.stage();
  const files = herdFile.files().map((file) => ({ ...file }));
  if (stage.step !== 'ready') return { files, stage: { ...stage } };
  const { file, id, sayings, preview } = stage;
  if (memory.takenIn?.preview === id)
    return { files, stage: { step: 'written', file, animals: memory.takenIn.animals } };
  return {
    files,
    stage: {
      step: 'ready',
      file,
      id,
      rows: preview.rows,
      good: preview.good.length,
      unknownColumns: [...preview.unknownColumns],
      unitsMixed: preview.unitsMixed,
      ...sayings,
      asks: asksOf(preview, sayings),
      faultCount: preview.faults.length,
      from,
      faults: preview.faults
        .slice(from, from + count)
        .map(({ line, field, heading, why, value, already }) => ({
          line,
          column: heading ?? field,
          why,
          value,
          already,
        })),
    },
  };
}

/** What the file leaves open that the keeper can say for all its rows. */
function asksOf(
  { faults }: HerdPreview,
  { dateOrder, species }: FileSayings,
): 'date-order' | 'species' | null {
  if (dateOrder === null && faults.some(({ why }) => why === 'date-order-not-known')) return 'date-order';
  if (species === null && faults.some(({ field, why }) => field === 'species' && why === 'missing'))
    return 'species';
  return null;
}
