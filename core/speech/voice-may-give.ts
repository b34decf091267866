/**
 * Whether a dose may be logged by reading its volume back aloud. Settled by the voice bench: only while none of a
 * thousand wrong read-backs, and none of a thousand other sentences, passes for the dose on the screen.
 */
export const VOICE_MAY_GIVE: boolean = true;
