import { spawnSync } from 'node:child_process';
import { readFileSync } from 'node:fs';
import { median, timed } from './timed.mjs';
import { readShoot } from '../../src/shoot/read.ts';
import { writeShoot } from '../../src/shoot/write.ts';
import { Ledger } from '../../src/shoot/ledger/Ledger.ts';
import { Checker } from '../../src/check/Checker.ts';
import { questions } from '../../src/check/questions/index.generated.ts';

const cold = (args) => median(7, () => timed(() => spawnSync('node', args)));

/** Starting, checking, and the tracked read. */
export async function bench() {
  const bare = cold(['-e', '0']);
  const beside = { floorName: 'bare node -e 0', floorMs: bare };
  const example = JSON.stringify({ fNumber: 2, transmittance: 0.75 });
  const text = readFileSync('examples/demo.shoot.json', 'utf8');
  const read = readShoot(text);
  const parse = median(15, () => timed(() => JSON.parse(text)));
  const shoot = read.value;
  const first = new Checker(shoot, questions);
  first.answers();
  const mass = Object.keys(shoot.kit.parts).find((id) => shoot.kit.parts[id].massG !== undefined);
  let turn = 0;
  const edit = (changed) => () => {
    turn += 1;
    const part = { ...shoot.kit.parts[mass], ...changed(turn) };
    first.update({ ...shoot, kit: { ...shoot.kit, parts: { ...shoot.kit.parts, [mass]: part } } });
    first.answers();
  };
  const [weigh, rename] = [edit((at) => ({ massG: 1000 + at })), edit((at) => ({ name: `Name ${at}` }))];
  return [
    { name: 'calc, one answer from cold', ms: cold(['dist/cli.js', 'calc', 'optics.tStop', example]), aimMs: 150, ...beside },
    { name: 'check on the demo from cold, immediate questions', ms: cold(['dist/cli.js', 'check', 'examples/demo.shoot.json']), aimMs: 300, ...beside },
    { name: 'read and check the demo file', ms: median(15, () => timed(() => readShoot(text))), floorName: 'JSON.parse', floorMs: parse },
    { name: 'write the demo file', ms: median(15, () => timed(() => writeShoot(shoot))), floorName: 'JSON.parse', floorMs: parse },
    { name: 'all immediate answers on the demo, warm code', ms: median(7, () => timed(() => new Checker(shoot, questions).answers())), floorName: 'JSON.parse', floorMs: parse },
    { name: 'answers after one edit of a mass', ms: median(15, () => timed(weigh)), floorName: 'JSON.parse', floorMs: parse },
    { name: 'answers after a new name of the same part', ms: median(15, () => timed(rename)), floorName: 'JSON.parse', floorMs: parse },
    ...trackedReads(),
  ];
}

/** 12 000 answers of 60 reads each over 2 000 places, beside the same sums in a plain loop. */
function trackedReads() {
  const values = Object.fromEntries(Array.from({ length: 2000 }, (_, at) => [`p${at}`, at]));
  const paths = Object.keys(values).map((key) => `values/${key}`);
  const keys = Object.keys(values);
  const tracked = () => {
    const ledger = new Ledger({ values });
    let sum = 0;
    for (let answer = 0; answer < 12_000; answer += 1) {
      sum += ledger.cell(`a${answer}`, () => {
        let own = 0;
        for (let read = 0; read < 60; read += 1) own += ledger.at(paths[(answer * 7 + read * 31) % 2000]);
        return own;
      });
    }
    return sum;
  };
  const plain = () => {
    let sum = 0;
    for (let answer = 0; answer < 12_000; answer += 1) for (let read = 0; read < 60; read += 1) sum += values[keys[(answer * 7 + read * 31) % 2000]];
    return sum;
  };
  return [{ name: '12 000 answers × 60 tracked reads', ms: median(9, () => timed(tracked)), aimMs: 20, floorName: 'the same look-ups in a plain loop', floorMs: median(9, () => timed(plain)) }];
}
