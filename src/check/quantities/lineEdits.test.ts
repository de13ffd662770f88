import { describe, expect, test } from 'vitest';
import { askAll } from '../../../test/ask.ts';
import { exampleShoot } from '../../../test/tinyShoot.ts';
import { applyEdit } from '../../shoot/edit/Edit.ts';
import { channels } from '../questions/lines/channels.ts';
import { fits } from '../questions/lines/fits.ts';
import { live } from '../questions/lines/live.ts';
import { permitted } from '../questions/lines/permitted.ts';
import { day } from '../questions/power/day.ts';
import { fed } from '../questions/power/fed.ts';
import { window } from '../questions/power/window.ts';
import { delay } from '../questions/sight/delay.ts';
import { focus } from '../questions/sight/focus.ts';
import { mode } from '../questions/sight/mode.ts';
import { squeeze } from '../questions/sight/squeeze.ts';

const demo = exampleShoot('demo');
const ids = [...Object.keys(demo.kit.parts), ...Object.values(demo.builds).flatMap(({ pieces }) => Object.keys(pieces))].filter((id) => id.includes('-'));

describe.each([['fits', fits], ['live', live], ['channels', channels], ['permitted', permitted], ['fed', fed], ['window', window], ['day', day], ['delay', delay], ['focus', focus], ['mode', mode], ['squeeze', squeeze]])('%s on the demo', (_, question) => {
  const answers = askAll(question, demo);
  test('every cure applies, and what it promises comes true', () => {
    for (const { key, mends = [] } of answers) {
      for (const { edit, use, says } of mends) {
        if (edit === undefined) continue;
        const edited = applyEdit(demo, edit);
        expect(edited.ok, `${says}: ${edited.ok ? '' : JSON.stringify(edited.faults)}`).toBe(true);
        const after = edited.ok ? askAll(question, edited.value.shoot).find((one) => one.key === key) : undefined;
        if (use !== undefined && after?.use !== undefined) expect(after.use, says).toBeCloseTo(use, 6);
      }
    }
  });
  test('sentences name parts, not ids', () => {
    for (const { says } of answers) for (const id of ids) expect(says).not.toContain(id);
  });
});
