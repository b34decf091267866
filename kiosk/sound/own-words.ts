import type { VoiceMessage } from '../../shared/voice.ts';

type Say = Extract<VoiceMessage, { type: 'say' }>;

/** Words a minute at which a browser's rate of 1 speaks, roughly. */
const USUAL_RATE = 165;

/** Whether this browser can make words by itself. */
export function hasOwnWords(): boolean {
  return typeof speechSynthesis !== 'undefined' && speechSynthesis.getVoices().length > 0;
}

/** Has the browser speak; resolves once it is over or cut off, rejects where it cannot. */
export function sayInOwnWords({ text, language, rate, volume }: Say): Promise<void> {
  const utterance = new SpeechSynthesisUtterance(text);
  utterance.lang = language;
  utterance.rate = rate / USUAL_RATE;
  utterance.volume = volume / 100;
  speechSynthesis.cancel();
  return new Promise((resolve, reject) => {
    utterance.onend = () => resolve();
    utterance.onerror = ({ error }) =>
      error === 'interrupted' || error === 'canceled' ? resolve() : reject(new Error(error));
    speechSynthesis.speak(utterance);
  });
}

/** Cuts it off. */
export function hushOwnWords(): void {
  if (typeof speechSynthesis !== 'undefined') speechSynthesis.cancel();
}
