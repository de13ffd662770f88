import { useEffect, useState } from 'react';

interface Props {
  readonly says: string;
  readonly text: string;
  readonly unit?: string;
  readonly numeric?: boolean;
  readonly quiet?: boolean;
  /** Takes what was typed; false where it will not do. */
  readonly commit: (text: string) => Promise<boolean>;
}

/** A field that commits on Enter or on leaving, and goes back on Escape. */
export function Typed({ says, text, unit = '', numeric = false, quiet = false, commit }: Props) {
  const [draft, setDraft] = useState(text);
  const [wrong, setWrong] = useState(false);
  useEffect(() => {
    setDraft(text);
    setWrong(false);
  }, [text]);
  const settle = async () => {
    if (draft.trim() === text.trim()) return setWrong(false);
    setWrong(!(await commit(draft.trim())));
  };
  return (
    <span className="typed" data-numeric={numeric} data-quiet={quiet}>
      <input
        type="text" inputMode={numeric ? 'decimal' : 'text'} aria-label={unit === '' ? says : `${says}, ${unit}`} aria-invalid={wrong} value={draft} autoComplete="off" spellCheck={!numeric}
        onChange={({ target }) => setDraft(target.value)} onBlur={() => void settle()}
        onKeyDown={({ key }) => {
          if (key === 'Enter') void settle();
          if (key === 'Escape') {
            setDraft(text);
            setWrong(false);
          }
        }}
      />
      {unit !== '' && <span className="unit" aria-hidden="true">{unit}</span>}
    </span>
  );
}
