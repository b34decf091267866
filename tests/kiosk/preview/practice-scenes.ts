import type { Scene } from './scene.ts';

/** Scenes of the round as they look while it is practised. */
export function practiceScenes(known: readonly Scene[]): readonly Scene[] {
  const practised = (base: string, name: string): Scene => {
    const scene = known.find((each) => each.name === base);
    if (scene === undefined) throw new Error(`no scene is called ${base}`);
    return { ...scene, name, state: { ...scene.state, practice: true } };
  };
  return [
    practised('no-jug', 'practice-take'),
    practised('visit-settling', 'practice-wait'),
    practised('caution-ask', 'practice-caution'),
    practised('offered', 'practice-give'),
    practised('logged', 'practice-logged'),
  ];
}
