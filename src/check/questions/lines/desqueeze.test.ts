import { expect, test } from 'vitest';
import { askAll, askOne } from '../../../../test/ask.ts';
import { coax, device, screen, sdi, wiredShoot } from '../../../../test/wiredShoot.ts';
import { desqueeze } from './desqueeze.ts';

const scene = (sends: object, set: object, boxDoes = false) =>
  wiredShoot({
    parts: { screen: screen({ 'sdi-in': sdi('in') }), box: device('Box', { in: sdi('in'), out: sdi('out', { from: 'in', desqueezes: boxDoes }) }), coax: coax(500) }, pieces: { screen: { of: 'screen', ...set }, box: { of: 'box' } },
    lines: { a: ['body/sdi-out', 'box/in', 'coax'], b: ['box/out', 'screen/sdi-in', 'coax'] }, sends,
  });

test('a picture as shot does not arise here', () => expect(askAll(desqueeze, scene({}, { squeeze: 1.5 }))).toEqual([]));
test('once, by the camera', () => expect(askOne(desqueeze, scene({ desqueezed: true }, {})).verdict).toBe('good'));
test('twice: by the camera and on the screen, with its cure', () => expect(askOne(desqueeze, scene({ desqueezed: true }, { squeeze: 1.5 }))).toMatchObject({ verdict: 'fails', says: 'The picture on Screen is de-squeezed twice: by Body and Screen.', mends: [{ says: 'switch de-squeeze off on Screen' }] }));
test('twice on the way', () => expect(askOne(desqueeze, scene({ desqueezed: true }, {}, true)).verdict).toBe('fails'));
