import type { ReactNode } from 'react';
import { useShoot } from '../state/page.ts';
import { goTo } from '../state/route.ts';
import type { Looking } from '../state/looking.ts';

/** Which setup is looked at; and its lenses as a strip, one of them on the camera. */
export function SetupBar({ looking, children }: { readonly looking: Looking; readonly children?: ReactNode }) {
  const shoot = useShoot();
  return (
    <div className="setup-bar">
      <select aria-label="Setup" value={looking.setup} onChange={({ target }) => goTo({ setup: target.value, glass: undefined })}>
        {Object.entries(shoot.setups).map(([id, { name }]) => <option key={id} value={id}>{name}</option>)}
      </select>
      <div className="strip" role="group" aria-label="Lens">
        {(shoot.setups[looking.setup]?.glasses ?? []).map((id) => (
          <button key={id} type="button" aria-pressed={id === looking.glass} onClick={() => goTo({ setup: looking.setup, glass: id })}>{shoot.glasses[id]?.name ?? id}</button>
        ))}
      </div>
      {children}
    </div>
  );
}

/** What to do where no setup can be looked at. */
export function NoSetup() {
  return <p className="empty">No setup yet. A setup is a camera build with its lenses; add one under <a href="#/shoot">shoot</a>.</p>;
}
