/** Whether bytes mean to be an EDID: they start as one does, or are nothing but hex digits and what stands between them. */
export function looksLikeEdid(bytes: Uint8Array): boolean {
  if (bytes[0] === 0 && bytes[1] === 0xff && bytes[2] === 0xff) return true;
  const start = String.fromCharCode(...bytes.subarray(0, 400));
  const line = start.split(/\r?\n/).find((one) => !/^\s*(#|\/\/|$)/.test(one)) ?? '';
  return /^\s*((0x)?[0-9a-f]+:\s*)?(0x)?00[\s,]*(0x)?ff[\s,]*(0x)?ff[\s,]*(0x)?ff/i.test(line);
}
