/** Why bytes were thrown away. */
export type DiscardReason =
  /** Before the first terminator of a connection: the line may have begun before we listened. */
  | 'unsynchronised'
  /** Longer than the longest frame of the format. */
  | 'too-long'
  /** A byte in the frame is not printable ASCII. */
  | 'not-ascii'
  /** Between two frames, where the format allows nothing. */
  | 'outside-frame'
  /** A frame that another one interrupted. */
  | 'broken-off'
  /** A frame whose checksum does not add up. */
  | 'bad-checksum'
  /** While the link settled after opening. */
  | 'settling';

/** Bytes that came to nothing, framing bytes included, and why. */
export interface Discarded {
  readonly kind: 'discarded';
  readonly bytes: number;
  readonly reason: DiscardReason;
}

/** What came off the wire: the text of one frame without its two framing bytes, or bytes thrown away. */
export type Framed = { readonly kind: 'line'; readonly text: string } | Discarded;

/**
 * Cuts a byte stream into frames, however the stream was chunked.
 *
 * Make a new one for every connection: half a frame must never meet half of another. Memory is bounded, and
 * at any moment bytes pushed = bytes of frames + bytes discarded + `pendingBytes`.
 */
export interface Framer {
  push(chunk: Uint8Array): Framed[];
  readonly pendingBytes: number;
}
