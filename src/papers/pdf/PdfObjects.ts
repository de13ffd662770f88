const ascii = (text: string): Uint8Array => Uint8Array.from(text, (letter) => letter.codePointAt(0) ?? 63);

/** The numbered objects of a PDF file and the table that finds them. */
export class PdfObjects {
  readonly #bodies: (readonly Uint8Array[])[] = [];

  /** A number for an object that is written later. */
  reserve(): number {
    this.#bodies.push([]);
    return this.#bodies.length;
  }

  fill(number: number, body: string): void {
    this.#bodies[number - 1] = [ascii(body)];
  }

  add(body: string): number {
    const number = this.reserve();
    this.fill(number, body);
    return number;
  }

  /** A stream of bytes already deflated. */
  stream(entries: string, deflated: Uint8Array): number {
    const number = this.reserve();
    this.#bodies[number - 1] = [ascii(`<< /Length ${deflated.length} /Filter /FlateDecode ${entries}>>\nstream\n`), deflated, ascii('\nendstream')];
    return number;
  }

  file(catalogue: number, info: number): Uint8Array[] {
    const pieces: Uint8Array[] = [Uint8Array.of(...ascii('%PDF-1.7\n%'), 0xE2, 0xE3, 0xCF, 0xD3, 10)];
    let length = pieces[0]?.length ?? 0;
    const places = this.#bodies.map((body, at) => {
      const place = length;
      const whole = [ascii(`${at + 1} 0 obj\n`), ...body, ascii('\nendobj\n')];
      pieces.push(...whole);
      length += whole.reduce((sum, piece) => sum + piece.length, 0);
      return place;
    });
    const rows = places.map((place) => `${place.toString().padStart(10, '0')} 00000 n \n`).join('');
    pieces.push(ascii(`xref\n0 ${places.length + 1}\n0000000000 65535 f \n${rows}trailer\n<< /Size ${places.length + 1} /Root ${catalogue} 0 R /Info ${info} 0 R >>\nstartxref\n${length}\n%%EOF\n`));
    return pieces;
  }
}

/** Text outside pages, in any script. */
export const pdfText = (text: string): string => `<FEFF${[...hexUnits(text)].join('')}>`;

/** UTF-16 units of a text, four hex digits each. */
export function hexUnits(text: string): string[] {
  return Array.from({ length: text.length }, (_, at) => text.charCodeAt(at).toString(16).toUpperCase().padStart(4, '0'));
}
