import { useEffect, useState } from 'react';
import type { PapersMade, PapersWanted } from '../../jobs/makePapers.ts';
import { download } from '../state/files.ts';
import { useShoot } from '../state/page.ts';
import { useSystem } from '../state/preferences.ts';
import { usePapers } from './usePapers.ts';

const SIZES: readonly PapersWanted['paper'][] = ['A4', 'Letter'];

/** Papers: what is printed or handed on, made here and now; looked at, saved one by one, or all in one. */
export function PapersView() {
  const shoot = useShoot();
  const system = useSystem();
  const { kinds, progress, made, make, stop } = usePapers();
  const [left, setLeft] = useState<ReadonlySet<string>>(new Set());
  const [setup, setSetup] = useState('');
  const [paper, setPaper] = useState<PapersWanted['paper']>('A4');
  const wanted = kinds.filter(({ id }) => !left.has(id)).map(({ id }) => id);
  const toggle = (id: string) => {
    const next = new Set(left);
    if (!next.delete(id)) next.add(id);
    setLeft(next);
  };
  return (
    <section className="papers-view" aria-label="Papers">
      <div className="setup-bar">
        <select aria-label="Setup" value={setup} onChange={({ target }) => setSetup(target.value)}>
          <option value="">every setup</option>
          {Object.entries(shoot.setups).map(([id, { name }]) => <option key={id} value={id}>{name}</option>)}
        </select>
        <select aria-label="Paper size" value={paper} onChange={({ target }) => setPaper(SIZES.find((size) => size === target.value) ?? 'A4')}>
          {SIZES.map((size) => <option key={size}>{size}</option>)}
        </select>
        {progress === undefined
          ? <button type="button" className="strong" disabled={wanted.length === 0} onClick={() => make({ kinds: wanted, setups: setup === '' ? Object.keys(shoot.setups) : [setup], paper, system, date: today() })}>Make the papers</button>
          : <button type="button" onClick={stop}>Stop</button>}
      </div>
      {progress !== undefined && <div className="study" role="status"><progress value={progress.done} max={progress.of} aria-label="Made so far" /> {progress.says}</div>}
      <fieldset className="kinds-of-paper">
        <legend>Which papers</legend>
        {kinds.map(({ id, says, per }) => <label key={id}><input type="checkbox" checked={!left.has(id)} onChange={() => toggle(id)} /> {says}{per === 'setup' ? <small> for each setup</small> : null}</label>)}
      </fieldset>
      {made !== undefined && <Made made={made} title={shoot.title} />}
    </section>
  );
}

function today(): string {
  const now = new Date();
  const two = (value: number) => String(value).padStart(2, '0');
  return `${now.getFullYear()}-${two(now.getMonth() + 1)}-${two(now.getDate())}`;
}

const TYPES: Readonly<Record<string, string>> = { pdf: 'application/pdf', svg: 'image/svg+xml', png: 'image/png', csv: 'text/csv', json: 'application/json', html: 'text/html', glb: 'model/gltf-binary' };

function Made({ made: { files, zip, missing }, title }: { readonly made: PapersMade; readonly title: string }) {
  const [addresses, setAddresses] = useState<readonly string[]>([]);
  useEffect(() => {
    const made = files.map(({ path, bytes }) => URL.createObjectURL(new Blob([bytes as Uint8Array<ArrayBuffer>], { type: TYPES[path.split('.').at(-1) ?? ''] ?? 'application/octet-stream' })));
    setAddresses(made);
    return () => made.forEach((address) => URL.revokeObjectURL(address));
  }, [files]);
  if (files.length === 0) return <p className="empty">None of these papers arises in this shoot.</p>;
  return (
    <div className="papers-made">
      <p><button type="button" onClick={() => download(`${title.toLowerCase().replaceAll(/[^\p{L}\p{N}]+/gu, '-')}.zip`, zip as Uint8Array<ArrayBuffer>, 'application/zip')}>Save all as one zip</button></p>
      {missing.length > 0 && <p className="note">The fonts have no letters for {missing.slice(0, 20).join(' ')}: they are printed as boxes.</p>}
      <ul>
        {files.map(({ path, bytes }, at) => (
          <li key={path}>
            <a href={addresses[at]} target="_blank" rel="noreferrer" {...(/\.(pdf|svg|png|html)$/.test(path) ? {} : { download: path.split('/').at(-1) })}>{path}</a>
            <small className="figure">{Math.max(1, Math.round(bytes.length / 1000))} kB</small>
          </li>
        ))}
      </ul>
    </div>
  );
}
