import EarLight from './EarLight.svelte';
import { Fingers } from './fingers.ts';
import { Hearing } from './hearing.svelte.ts';
import SaySheet from './SaySheet.svelte';
import TalkPlate from './TalkPlate.svelte';

/** What the page fetches to hear with, once its screen stands. */
export { EarLight, Fingers, Hearing, SaySheet, TalkPlate };
