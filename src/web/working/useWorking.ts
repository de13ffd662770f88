import { useEffect, useState } from 'react';
import type { Doubt } from '../../check/doubt.ts';
import type { Working } from '../../jobs/answers.ts';
import { usePage } from '../state/page.ts';
import { desk } from '../worker/desk.ts';

/** The working of an answer, asked for again whenever the answer changes; the last one stays until the next is here. */
export function useWorking(key: string | undefined): Working | undefined | 'gone' {
  const answer = usePage(({ answers }) => (key === undefined ? undefined : answers.get(key)));
  const revision = usePage((state) => state.revision);
  const [working, setWorking] = useState<Working | 'gone' | undefined>();
  useEffect(() => {
    let wanted = true;
    if (key === undefined) setWorking(undefined);
    else void desk.working(key).then((found) => wanted && setWorking(found ?? 'gone'));
    return () => {
      wanted = false;
    };
  }, [key, answer, revision]);
  return working === 'gone' || working?.answer.key === key ? working : undefined;
}

/** How far the answer may be out; asked for once the working is shown, since the question is put many times for it. */
export function useDoubt({ answer }: Working): Doubt | undefined {
  const [found, setFound] = useState<{ readonly of: Working['answer']; readonly doubt: Doubt | undefined } | undefined>();
  useEffect(() => {
    let wanted = true;
    if (answer.use !== undefined) void desk.doubt(answer.key).then((doubt) => wanted && setFound({ of: answer, doubt }));
    return () => {
      wanted = false;
    };
  }, [answer]);
  return found?.of === answer ? found.doubt : undefined;
}
