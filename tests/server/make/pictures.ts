/** The smallest JPEG that has a start and an end, with so many bytes between. */
export function jpeg(between = 20): Buffer {
  return Buffer.concat([
    Buffer.from([0xff, 0xd8, 0xff, 0xe0]),
    Buffer.alloc(between, 7),
    Buffer.from([0xff, 0xd9]),
  ]);
}

/** A WebP as long as it says, with so many bytes in it. */
export function webp(within = 20): Buffer {
  const head = Buffer.from('RIFF....WEBPVP8 ', 'latin1');
  head.writeUInt32LE(head.length - 8 + within, 4);
  return Buffer.concat([head, Buffer.alloc(within, 7)]);
}
