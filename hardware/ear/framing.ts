/** The letters of the listener's messages; `listener.c` tells what each means. */
export type MessageKind = 'W' | 'G' | 'R' | 'U' | 'A' | 'P' | 'E' | 'K' | 'V';

const NO_BYTES = new Uint8Array(0);

/** One message to the listener: letter, length, content. */
export function messageOf(kind: MessageKind, content: string | Uint8Array = NO_BYTES): Buffer {
  const body = typeof content === 'string' ? Buffer.from(content, 'latin1') : content;
  const message = Buffer.allocUnsafe(5 + body.length);
  message.write(kind, 0, 'latin1');
  message.writeUInt32LE(body.length, 1);
  message.set(body, 5);
  return message;
}

/** The samples of bytes, 16 bits each, little endian; a last odd byte is left out. */
export function samplesOf(bytes: Uint8Array): Int16Array {
  const view = new DataView(bytes.buffer, bytes.byteOffset, bytes.length);
  return Int16Array.from({ length: Math.floor(bytes.length / 2) }, (_, i) => view.getInt16(2 * i, true));
}

/** Samples as the bytes the listener reads. */
export function bytesOf(samples: Int16Array): Uint8Array {
  return new Uint8Array(samples.buffer, samples.byteOffset, samples.byteLength);
}
