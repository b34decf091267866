/** Stands in for the server of a built kiosk. */
export function startFakeServer(root: string): Promise<{
  readonly url: string;
  show(state: unknown, http?: Record<string, unknown>, visitor?: { kind: string }): void;
  tell(changes: unknown): void;
  /** Intents, then whatever else pages told, then what their microphones sent. */
  readonly received: unknown[];
  readonly told: unknown[];
  readonly sounds: Buffer[];
  close(): Promise<void>;
}>;
