/** The two corners that are held to end the lock: no cloth and no single hand lies on both for long. */
export const CORNERS = ['first', 'second'] as const;
/** One of the two corners. */
export type Corner = (typeof CORNERS)[number];

/** The fingers that rest on the two corners, by their pointer. */
export type Fingers = ReadonlyMap<number, Corner>;

/** The fingers with one more. */
export function fingerOn(fingers: Fingers, pointerId: number, corner: Corner): Fingers {
  return new Map(fingers).set(pointerId, corner);
}

/** The fingers with one lifted, or moved away. */
export function fingerOff(fingers: Fingers, pointerId: number): Fingers {
  const left = new Map(fingers);
  left.delete(pointerId);
  return left;
}

/** Whether a finger rests on each corner. */
export function bothHeld(fingers: Fingers): boolean {
  return new Set(fingers.values()).size === CORNERS.length;
}
