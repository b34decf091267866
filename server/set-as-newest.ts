/** Puts a key into a map as its newest, known or not: so the order of the map is that of the last use, the oldest first. */
export function setAsNewest<K, V>(map: Map<K, V>, key: K, value: V): void {
  map.delete(key);
  map.set(key, value);
}
