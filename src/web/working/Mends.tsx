import type { Mend } from '../../check/answer.ts';
import { noneDoes, shortfall } from '../../check/cures.ts';
import { verdictOf } from '../../check/judge.ts';
import { LoadLine, printUse } from '../marks/LoadLine.tsx';
import { Mark } from '../marks/Mark.tsx';
import { edit } from '../state/actions.ts';
import { useSaid } from '../state/preferences.ts';

/** Cures, each tried: what it leads to, what it costs, and a button where the file can make it. */
export function Mends({ mends }: { readonly mends: readonly Mend[] }) {
  if (mends.length === 0) return null;
  const none = noneDoes({ mends });
  return (
    <section className="mends" aria-label="What would mend it">
      <h3>What would mend it</h3>
      {mends.map((mend) => <MendRow key={mend.says} mend={mend} />)}
      {none !== undefined && <p className="about">{none}</p>}
    </section>
  );
}

function MendRow({ mend }: { readonly mend: Mend }) {
  const { says, costs, use, edit: cure } = mend;
  const said = useSaid();
  const beside = [shortfall(mend), costs].filter((one) => one !== undefined).join('; ');
  return (
    <div className="mend">
      <p>{said(says)}{beside === '' ? null : <small>{said(beside)}</small>}</p>
      {use !== undefined && (
        <p className="mend-use"><Mark verdict={verdictOf(use)} /><LoadLine use={use} verdict={verdictOf(use)} /><span className="figure">{printUse(use)}</span></p>
      )}
      {cure !== undefined && <button type="button" onClick={() => void edit(cure.says, cure.patches)}>Do this</button>}
    </div>
  );
}
