/**
 * Whether a dose may be logged by reading its volume back aloud: only once `npm run bench -- voice-full` has shown that
 * none of a thousand wrong read-backs, and none of a thousand other sentences, passes for the dose on the screen. It has
 * not been run on so many.
 */
export const VOICE_MAY_GIVE: boolean = false;
