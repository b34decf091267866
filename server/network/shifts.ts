/** How long a person stays at work on a device that nothing is done on. */
const IDLE_MS = 15 * 60_000;

/** Who is at work on which device. Nobody is after a restart. Times are running time in milliseconds. */
export class Shifts {
  readonly #byDevice = new Map<string, { readonly person: string; until: number }>();

  begin(deviceId: string, person: string, now: number): void {
    this.#byDevice.set(deviceId, { person, until: now + IDLE_MS });
  }

  /** Who is at work on a device. */
  personOn(deviceId: string, now: number): string | null {
    const shift = this.#byDevice.get(deviceId);
    return shift !== undefined && now < shift.until ? shift.person : null;
  }

  /** Notes that something was done on a device: its person stays. */
  worked(deviceId: string, now: number): void {
    const shift = this.#byDevice.get(deviceId);
    if (shift !== undefined && now < shift.until) shift.until = now + IDLE_MS;
  }

  end(deviceId: string): void {
    this.#byDevice.delete(deviceId);
  }

  /** Ends whatever a person is doing anywhere; comes to the devices. */
  endOf(person: string): string[] {
    return this.#endWhere((shift) => shift.person === person);
  }

  /** Ends what nobody has done anything on for long; comes to the devices. */
  endIdle(now: number): string[] {
    return this.#endWhere(({ until }) => now >= until);
  }

  #endWhere(over: (shift: { person: string; until: number }) => boolean): string[] {
    const ended = [...this.#byDevice].filter(([, shift]) => over(shift)).map(([deviceId]) => deviceId);
    for (const deviceId of ended) this.#byDevice.delete(deviceId);
    return ended;
  }
}
