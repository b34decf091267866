import type { Formulary } from '../medicine/formulary.ts';
import { ALBENDAZOLE } from './albendazole.ts';
import { FENBENDAZOLE } from './fenbendazole.ts';
import { IVERMECTIN } from './ivermectin.ts';
import { LEVAMISOLE } from './levamisole.ts';
import { MOXIDECTIN } from './moxidectin.ts';
import { THIAMINE } from './thiamine.ts';

/** Every medicine the kiosk ships with, one file each. */
export const SHIPPED: Formulary = [LEVAMISOLE, ALBENDAZOLE, FENBENDAZOLE, IVERMECTIN, MOXIDECTIN, THIAMINE];
