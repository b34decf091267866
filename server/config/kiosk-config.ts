import { z } from 'zod';
import { isTimeZone } from '../../core/dosing/local-time.ts';
import { scaleProfile, settingsTrouble } from '../../hardware/scale/profiles.ts';
import type { ScaleSettings } from '../../hardware/scale/settings.ts';
import { WAND_BAUD, WAND_PROFILE } from '../../hardware/wand/wand-driver.ts';
import { ScreenLanguage } from '../../shared/language.ts';
import { SETTING_WORDS } from './setting-words.ts';

const baud = z.int().min(300).max(921_600);
const path = z.string().startsWith('/', 'a device path starts with /, such as /dev/serial/by-id/…');

/** What the keeper says of a scale because its lines do not. */
const Settings = z.strictObject({
  unit: z.enum(['kg', 'g', 'lb', 'oz']).exactOptional(),
  noTare: z.boolean().exactOptional(),
  line: z.enum(['8n1', '7e1']).exactOptional(),
  pattern: z.string().min(1).max(200).exactOptional(),
}) satisfies z.ZodType<ScaleSettings>;

/** A scale: where it is plugged in, what it speaks, and what it can carry. */
export const ScaleConfig = z
  .strictObject({
    path,
    profile: z.string().refine((id) => scaleProfile(id) !== undefined, { message: 'no such scale format' }),
    baud: baud.default(9600),
    settings: Settings.optional(),
    /** The most it carries, in grams; a higher reading is refused. */
    capacityGrams: z.number().positive().optional(),
    /** The step it shows, in grams; left out, it is learned from the decimals it sends. */
    divisionGrams: z.number().positive().optional(),
  })
  .superRefine(({ profile, settings = {} }, context) => {
    for (const { setting, why } of settingsTrouble(profile, settings)) {
      context.addIssue({ code: 'custom', path: ['settings', setting], message: SETTING_WORDS[why] });
    }
  });
/** A scale. */
export type ScaleConfig = z.infer<typeof ScaleConfig>;

/** An ear-tag wand. */
export const WandConfig = z.strictObject({
  path,
  profile: z.literal(WAND_PROFILE),
  baud: baud.default(WAND_BAUD),
});
/** An ear-tag wand. */
export type WandConfig = z.infer<typeof WandConfig>;

/** The three roles; one left out is absent. */
export const DevicesConfig = z
  .strictObject({
    platform: ScaleConfig.optional(),
    bench: ScaleConfig.optional(),
    wand: WandConfig.optional(),
  })
  .superRefine((devices, context) => {
    const seen = new Map<string, string>();
    for (const [role, device] of Object.entries(devices)) {
      if (device === undefined) continue;
      const other = seen.get(device.path);
      if (other !== undefined) {
        context.addIssue({
          code: 'custom',
          path: [role, 'path'],
          message: `the ${other} already uses this device`,
        });
      }
      seen.set(device.path, role);
    }
  });
/** The three roles. */
export type DevicesConfig = z.infer<typeof DevicesConfig>;

/** Where the kiosk speaks. */
export const SpeechConfig = z.strictObject({
  /** On the page the kiosk's own screen shows, or, where there is no screen, on the board's own loudspeaker. */
  output: z.enum(['page', 'alsa']).default('page'),
  /** The ALSA name of that loudspeaker. */
  alsaDevice: z.string().min(1).max(80).default('default'),
});
/** Where the kiosk speaks. */
export type SpeechConfig = z.infer<typeof SpeechConfig>;

/** Where the kiosk hears, besides the page of its own screen. */
export const HearingConfig = z.strictObject({
  /** The ALSA name of the board's own microphone, such as "plughw:1,0"; left out, it has none. */
  alsaDevice: z.string().min(1).max(80).exactOptional(),
});
/** Where the kiosk hears. */
export type HearingConfig = z.infer<typeof HearingConfig>;

/** The least diagonal a panel may have, in inches. */
export const SMALLEST_INCHES = 3;
/** The largest diagonal a panel may have, in inches. */
export const LARGEST_INCHES = 40;
/** Who works where nobody has said. */
export const UNNAMED_KEEPER = 'Keeper';
/** How many may work at a kiosk. */
export const MOST_PEOPLE = 12;

const port = z.int().min(0).max(65_535);

/** How other devices of the farm come in. */
export const NetworkConfig = z.strictObject({
  /** Turned on whatever the screen says; left out, the screen turns it on and off. */
  on: z.literal(true).exactOptional(),
  port: port.default(4181),
  /** A proxy on the board that has the encryption: the port it hands on to, and the name other devices know it by. */
  proxy: z
    .strictObject({
      port,
      name: z
        .string()
        .max(253)
        .regex(/^[a-z0-9.-]+$/, 'a name such as kiosk.example, lower case, without https://'),
    })
    .exactOptional(),
});

/** The file `kiosk.json` in the data folder. */
export const KioskConfig = z.strictObject({
  panel: z
    .strictObject({
      widthPx: z.int().min(320).max(8000),
      heightPx: z.int().min(320).max(8000),
      diagonalInches: z.number().min(SMALLEST_INCHES).max(LARGEST_INCHES),
    })
    .prefault({ widthPx: 800, heightPx: 480, diagonalInches: 7 }),
  face: z.enum(['dim', 'glare']).default('dim'),
  /** The language of screen and voice until another is chosen at Shed. */
  language: ScreenLanguage.default('en'),
  weightUnit: z.enum(['kg', 'lb']).default('kg'),
  /** Who works here, as the screen names them. */
  people: z.array(z.string().trim().min(1).max(24)).min(1).max(MOST_PEOPLE).prefault([UNNAMED_KEEPER]),
  /** The farm's zone, in which days are counted and clear times shown; left out, the board's own. */
  timeZone: z
    .string()
    .refine(isTimeZone, { message: 'no such time zone: give one such as Europe/Dublin' })
    .default(() => Intl.DateTimeFormat().resolvedOptions().timeZone),
  devices: DevicesConfig.prefault({}),
  /** Where records are written to be taken along, such as where a memory stick is mounted; left out, nowhere. */
  exportFolder: z
    .string()
    .startsWith('/', 'a folder by its whole path, such as /media/stick')
    .max(500)
    .exactOptional(),
  /** Where copies of all records are kept, such as a disk on the network; it must be there. Memory sticks need not be named. */
  backupFolder: z
    .string()
    .startsWith('/', 'a folder by its whole path, such as /mnt/copies')
    .max(500)
    .exactOptional(),
  speech: SpeechConfig.prefault({}),
  hearing: HearingConfig.prefault({}),
  network: NetworkConfig.prefault({}),
});
/** The file `kiosk.json` in the data folder. */
export type KioskConfig = z.infer<typeof KioskConfig>;
