import { takeIn } from '../state/actions.ts';
import { useShoot } from '../state/page.ts';
import { desk } from '../worker/desk.ts';

/** Another part in place of this one wherever it is used: joints and lines stay where they fit, the builds as they were are kept. */
export function ReplacePart({ id }: { readonly id: string }) {
  const { kit, builds, glasses } = useShoot();
  const part = kit.parts[id];
  const uses = [...Object.values(builds), ...Object.values(glasses)].filter(({ pieces }) => Object.values(pieces).some(({ of }) => of === id)).length;
  const others = Object.entries(kit.parts).filter(([other, one]) => other !== id && one.kind === part?.kind);
  if (uses === 0 || others.length === 0) return null;
  return (
    <p className="replace">
      <select aria-label="Replace it by" value="" onChange={({ target }) => void desk.replacing(id, target.value).then((taking) => takeIn(taking, 'It could not be replaced.'))}>
        <option value="">Replace it by another</option>
        {others.map(([other, { name }]) => <option key={other} value={other}>{name}</option>)}
      </select>
      <small> used in {uses} {uses === 1 ? 'place' : 'places'}; these are kept as they were, named “before”</small>
    </p>
  );
}
