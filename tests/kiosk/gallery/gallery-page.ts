/** What may be asked of the page of all scenes from outside, as `window.gallery`. */
export interface GalleryPage {
  /** Begins the kiosk anew at a place, in a language or in the catalogue made of longer words, and waits until it stands. */
  open(place: string, words: 'en' | 'es' | 'pseudo'): Promise<void>;
  /** Presses a control once it is there; keeps it pressed where its name begins with "hold:". */
  press(tap: string): Promise<void>;
  /** What is wrong with sizes, gaps, letters and contrast of what is shown. */
  faults(): string[];
  /** What bars a person, in the words of the checker. */
  barriers(): Promise<string[]>;
}

declare global {
  interface Window {
    gallery: GalleryPage;
  }
}
