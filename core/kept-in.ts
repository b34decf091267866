/** What a map keeps under a key, made and put there where it keeps nothing yet. */
export function keptIn<Key, Value>(map: Map<Key, Value>, key: Key, make: () => Value): Value {
  const kept = map.get(key);
  if (kept !== undefined) return kept;
  const made = make();
  map.set(key, made);
  return made;
}
