/**
 * Lets one give go out for one offer, however often the control is pressed.
 *
 * It opens again only when the server refused that give, or when the connection was cut before its answer.
 */
export class GiveLatch {
  #offerId: string | null = null;
  #intentId: string | null = null;

  /** The offer for which a give is out, or `null`. */
  get offerId(): string | null {
    return this.#offerId;
  }

  /** Closes the latch for an offer; `false` where it was closed already. */
  close(offerId: string, intentId: string): boolean {
    if (this.#offerId === offerId) return false;
    this.#offerId = offerId;
    this.#intentId = intentId;
    return true;
  }

  /** Opens the latch if the intent refused is the give it closed for. */
  refused(intentId: string | null): void {
    if (intentId !== null && intentId === this.#intentId) this.open();
  }

  /** Opens the latch. */
  open(): void {
    this.#offerId = null;
    this.#intentId = null;
  }
}
