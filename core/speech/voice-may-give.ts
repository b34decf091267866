/**
 * Whether a dose may be logged by reading its volume back aloud: as long as `npm run bench -- voice-full` shows that none
 * of a thousand wrong read-backs, and none of a thousand other sentences, passes for the dose on the screen.
 *
 * Whoever changes the judge, the grammars or the engine measures again before this stays true.
 */
export const VOICE_MAY_GIVE = true;
