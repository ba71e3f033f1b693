const table = Uint32Array.from({ length: 256 }, (_, byte) => {
  let sum = byte;
  for (let bit = 0; bit < 8; bit++) sum = (sum & 1) === 0 ? sum >>> 1 : (sum >>> 1) ^ 0xed_b8_83_20;
  return sum;
});

/** The checksum that zip archives keep of their files (CRC-32 of ISO/IEC 13239). */
export function crc32(bytes: Uint8Array): number {
  let sum = 0xff_ff_ff_ff;
  for (const byte of bytes) sum = (sum >>> 8) ^ (table[(sum ^ byte) & 0xff] ?? 0);
  return (sum ^ 0xff_ff_ff_ff) >>> 0;
}
