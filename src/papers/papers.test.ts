import { execFileSync } from 'node:child_process';
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { unzipSync } from 'fflate';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { outsideProgram } from '../../test/outsideTool.ts';
import { testPress } from '../../test/press.ts';
import { type Draft, exampleShoot, tinyShoot } from '../../test/tinyShoot.ts';
import type { Shoot } from '../shoot/schema/shoot.ts';
import { bundle, Papers, paperKinds } from './bundle.ts';
import type { PaperFile, Press } from './paper.ts';

const folder = mkdtempSync(join(tmpdir(), 'papers-'));
afterAll(() => rmSync(folder, { recursive: true, force: true }));

async function allOf(shoot: Shoot, press: Press, wanted: ConstructorParameters<typeof Papers>[2] = {}): Promise<PaperFile[]> {
  const papers = new Papers(shoot, press, wanted);
  const made: PaperFile[] = [];
  for (const step of papers.steps) made.push(...(await papers.make(step)));
  return made;
}

const onDisk = ({ bytes }: PaperFile, name: string): string => {
  writeFileSync(join(folder, name), bytes);
  return join(folder, name);
};

const qpdf = outsideProgram('qpdf');
const pdftotext = outsideProgram('pdftotext', 'poppler-utils');
const xmllint = outsideProgram('xmllint', 'libxml2-utils');

const wordsOf = (file: PaperFile): string => pdftotext.run(['-layout', onDisk(file, 'words.pdf'), '-']);

describe('the papers of the demo', () => {
  let made: PaperFile[];
  let press: Press;
  beforeAll(async () => {
    press = await testPress();
    made = await allOf(exampleShoot('demo'), press);
  }, 60_000);

  test('every kind is there', () => {
    const paths = made.map(({ path }) => path).join('\n');
    for (const wanted of ['pack-list.pdf', 'phone.html', 'build-sheet.pdf', 'lines.pdf', 'labels.pdf', 'lens-cards.pdf', 'focus-strips.pdf', 'framing.fdl', 'charts.pdf', 'checklist.pdf', 'problems.pdf', 'radio.pdf', '.glb', '.stl', '.3mf']) expect(paths).toContain(wanted);
    expect(new Set(made.map(({ path }) => path)).size).toBe(made.length);
    expect(paperKinds.length).toBeGreaterThanOrEqual(14);
  });

  test.skipIf(qpdf.missing)('qpdf finds nothing wrong with any PDF', () => {
    for (const file of made.filter(({ path }) => path.endsWith('.pdf'))) expect(qpdf.run(['--check', onDisk(file, 'check.pdf')]), file.path).toContain('No syntax or stream encoding errors found');
  }, 60_000);

  test.skipIf(pdftotext.missing)('text is text: poppler finds the words, on each page the revision and the date', () => {
    const sheet = made.find(({ path }) => path === 'jetty-sticks/lines.pdf') as PaperFile;
    const words = wordsOf(sheet);
    expect(words).toMatch(/Line schedule[\s\S]*Hot-swap plate[\s\S]*1920 × 1080 at 25/);
    for (const page of words.split('\f').slice(0, -1)) expect(page).toMatch(/2026-11-25 · revision 1 · Jetty, sticks/);
    expect(wordsOf(made.find(({ path }) => path === 'jetty-sticks/build-sheet.pdf') as PaperFile)).toContain('This build fails');
  });

  test.skipIf(pdftotext.missing)('the bags on the feet are carried there, and put on while it is built', () => {
    // Legs 6 kg and the puller’s stand 14 kg, of one setup.
    expect(wordsOf(made.find(({ path }) => path === 'pack-list.pdf') as PaperFile)).toMatch(/Sandbags beside: 20\s?kg at once/);
    expect(wordsOf(made.find(({ path }) => path === 'jetty-sticks/build-sheet.pdf') as PaperFile)).toMatch(/Sandbags of 6\s?kg on the feet of Tall legs/);
  });

  test.skipIf(xmllint.missing)('every SVG is well-formed XML', () => {
    for (const file of made.filter(({ path }) => path.endsWith('.svg'))) expect(xmllint.run(['--noout', onDisk(file, 'check.svg')]), file.path).toBe('');
  }, 60_000);

  test('the same shoot on the same day gives the same bytes, in a zip that holds them all', async () => {
    const again = await allOf(exampleShoot('demo'), await testPress());
    expect(Buffer.compare(Buffer.from(bundle(made)), Buffer.from(bundle(again)))).toBe(0);
    expect(Object.keys(unzipSync(bundle(made))).toSorted()).toEqual(made.map(({ path }) => path).toSorted());
  }, 60_000);

  test.skipIf(pdftotext.missing)('Letter and imperial: another page, feet on the strips', async () => {
    const other = await allOf(exampleShoot('demo'), await testPress({ paper: 'Letter', system: 'imperial' }), { setups: ['jetty-sticks'], kinds: ['focus-strips', 'lens-cards'] });
    const strips = other.find(({ path }) => path.endsWith('focus-strips.pdf')) as PaperFile;
    expect(execFileSync('pdfinfo', [onDisk(strips, 'size.pdf')]).toString()).toMatch(/Page size:\s+792 x 612/);
    expect(wordsOf(strips)).toContain('Feet and inches');
  });
});

describe('what nobody printed for', () => {
  const long = `${'ナメ'.repeat(20)} אבגד עברית العربية ${'Ж'.repeat(60)} <&"' ${'x'.repeat(50)}`.slice(0, 200);

  test.skipIf(pdftotext.missing)('a name of 200 letters in several scripts is printed, and what no font has is told', async () => {
    const press = await testPress();
    const made = await allOf(tinyShoot((draft) => {
      const [setup] = Object.keys(draft.setups);
      draft.title = long;
      draft.setups[setup as string].name = long;
      for (const part of Object.values(draft.kit.parts as Draft)) (part as Draft).name = long;
    }), press);
    expect(made.length).toBeGreaterThan(5);
    for (const file of made.filter(({ path }) => path.endsWith('.pdf'))) expect(wordsOf(file), file.path).toContain('ЖЖЖ');
    expect([...press.fonts.missing]).toEqual(expect.arrayContaining(['ナ', 'メ']));
  }, 60_000);

  test('two hundred pieces and as many cables', async () => {
    const made = await allOf(exampleShoot('demo', (draft) => {
      const build = draft.builds.tripod;
      for (let at = 0; at < 200; at += 1) {
        draft.kit.parts[`extra-${at}`] = { name: `Extra ${at}`, kind: 'other', massG: 10 };
        build.pieces[`extra-${at}`] = { of: `extra-${at}` };
      }
    }), await testPress(), { setups: ['jetty-sticks'] });
    expect(made.some(({ path }) => path === 'jetty-sticks/build-sheet.pdf')).toBe(true);
  }, 60_000);

  test.skipIf(pdftotext.missing)('what is not known is said in large letters, and nothing is printed as NaN', async () => {
    const made = await allOf(tinyShoot((draft) => {
      for (const part of Object.values(draft.kit.parts as Draft)) {
        delete (part as Draft).lens?.imageCircleMm;
        delete (part as Draft).focus;
        delete (part as Draft).massG;
      }
    }), await testPress());
    const words = made.filter(({ path }) => path.endsWith('.pdf')).map(wordsOf).join('\n');
    expect(words).toMatch(/Not all of this is known|This build fails/);
    expect(words).not.toMatch(/NaN|undefined|Infinity ?(?:mm|m|°|px|g|W)/);
  }, 60_000);
});
