import { z } from 'zod';
import { FIRST_STEPS } from '../../core/first-start/first-start.ts';
import { CURRENCIES } from '../../core/stock/money.ts';
import { EarSettings } from '../../shared/ear.ts';
import { ScreenLanguage } from '../../shared/language.ts';
import { VoiceSettings } from '../../shared/voice.ts';
import type { Db } from './open-store.ts';

/** What is set by taps at the Shed screen and kept. */
export const Settings = z.strictObject({
  face: z.enum(['dim', 'glare']),
  /** The language of the screen. */
  language: ScreenLanguage,
  weightUnit: z.enum(['kg', 'lb']),
  person: z.string(),
  syringeIds: z.array(z.string()),
  safetyRead: z.boolean(),
  /** Where the first start stands; `null` once it is over. */
  firstStart: z.enum(FIRST_STEPS).nullable(),
  /** How many days a passed check of a scale is good for. */
  scaleCheckDays: z.int().min(1).max(365),
  /** Whether a failed or long overdue check of the platform stops a dose instead of asking. */
  scaleCheckStops: z.boolean(),
  /** How likely barber's pole worm is now, by the keeper's word. */
  wormSeason: z.enum(['high', 'low']),
  /** The mean of the mob's last egg counts; `null` where none is known. */
  eggsPerGram: z.number().nullable(),
  /** Since when the animals weighed now are off feed, milliseconds since 1970; `null` where they are not. */
  offFeedSinceMs: z.number().nullable(),
  /** What prices are entered in, a code of ISO 4217. */
  currency: z.enum(CURRENCIES),
  /** Where the farm lies, in degrees north; `null` while nobody has said. */
  latitude: z.number().min(-90).max(90).nullable(),
  /** How the kiosk speaks. */
  voice: VoiceSettings,
  /** When the kiosk hears. */
  ear: EarSettings,
  /** What labels and tables were last printed on. */
  paper: z.enum(['a6', 'roll']),
});
/** What is set by taps at the Shed screen and kept. */
export type Settings = z.infer<typeof Settings>;

/** The settings on disk, one row a name. */
export function createSettingsStore(db: Db) {
  const all = db.prepare('SELECT name, value FROM settings');
  const put = db.prepare(
    'INSERT INTO settings (name, value) VALUES (?, ?) ON CONFLICT (name) DO UPDATE SET value = excluded.value',
  );
  return {
    /** The settings kept, over the defaults given; a row that no longer makes sense falls back to its default. */
    read(defaults: Settings): Settings {
      const merged: Record<string, unknown> = { ...defaults };
      for (const row of all.all() as { name: string; value: string }[]) {
        if (!(row.name in Settings.shape)) continue;
        const field = Settings.shape[row.name as keyof Settings].safeParse(JSON.parse(row.value));
        if (field.success) merged[row.name] = field.data;
      }
      return Settings.parse(merged);
    },
    /** Keeps one setting. */
    write<K extends keyof Settings>(name: K, value: Settings[K]): void {
      put.run(name, JSON.stringify(value));
    },
  };
}
