/** From this share of the target the tone sounds. */
const FROM = 0.8;
/** The tone's pitch there and at the target, in Hz. */
const LOW = 520;
const HIGH = 1560;

/**
 * The pitch of the tone while water goes in, in Hz, or `null` for silence: it rises as the target nears, and ends at
 * the band, where "stop" is called. Masses in grams; `target` above 0.
 */
export function pourTone(now: number | null, target: number, band: number): number | null {
  if (now === null || now >= target - band) return null;
  const near = (now / target - FROM) / (1 - FROM);
  // Equal steps of pitch, as the ear counts them, for equal amounts of water.
  return near < 0 ? null : LOW * (HIGH / LOW) ** near;
}
