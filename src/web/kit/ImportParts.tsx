import type { Taking } from '../../jobs/importParts.ts';
import { takeIn } from '../state/actions.ts';
import { desk } from '../worker/desk.ts';

/** Parts from a file: a table with a header row, or what a screen says of itself (EDID, as bytes or hex text). */
export function ImportParts() {
  const take = async (file: File | undefined) => {
    if (file === undefined) return;
    const taking: Taking = /\.csv$/i.test(file.name) || file.type === 'text/csv' ? await desk.takingCsv(await file.text()) : await desk.takingEdid(await edidIn(file));
    await takeIn(taking, `Of ${file.name} nothing could be taken in.`);
  };
  return (
    <label className="import">
      <span>Take parts from a CSV table or an EDID</span>
      <input type="file" accept=".csv,text/csv,.bin,.edid,.hex,.txt" onChange={({ target }) => void take(target.files?.[0]).then(() => (target.value = ''))} />
    </label>
  );
}

/** Bytes as they are; text where the file is hex. */
async function edidIn(file: File): Promise<Uint8Array | string> {
  const bytes = new Uint8Array(await file.arrayBuffer());
  return bytes[0] === 0 ? bytes : new TextDecoder().decode(bytes);
}
