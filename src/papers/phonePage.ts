import { glassesOf } from '../check/subjects.ts';
import { inSystem } from '../units/print.ts';
import { lensCard, swapOrder } from './cards/lensCardRows.ts';
import { escaped } from './ink/writeSvg.ts';
import { rowsOf } from './lineSchedule.ts';
import { type Making, type MakingOfSetup, paper, textFile } from './paper.ts';
import { pageScript } from './phone/pageScript.ts';
import { pageStyle } from './phone/pageStyle.ts';
import { type Check, checksOf, tickKey } from './prep/checks.ts';
import { problemsOf } from './prep/problems.ts';
import { answersOf } from './sheet/setupState.ts';

/** Cards, lines, checklist and problem sheet in one page that needs no network; what is typed there comes back as a file. */
export const phonePage = paper({
  id: 'phone',
  says: 'Phone page',
  per: 'shoot',
  make: (making) => [textFile('phone.html', page(making))],
});

function page(making: Making): string {
  const { ledger, shoot, revision, press } = making;
  const setups = ledger.keys('setups').map((setup): MakingOfSetup => ({ ...making, setup, setupName: (ledger.at(`setups/${setup}/name`) as string | undefined) ?? setup, glasses: glassesOf(ledger, setup) }));
  const about = JSON.stringify({ shoot, revision }).replaceAll('<', '\\u003c');
  return `<!doctype html>
<html lang="en">
<head>
<meta charset="utf-8">
<meta name="viewport" content="width=device-width,initial-scale=1">
<meta http-equiv="Content-Security-Policy" content="default-src 'none';style-src 'unsafe-inline';script-src 'unsafe-inline';img-src data:;base-uri 'none';form-action 'none'">
<link rel="icon" href="data:,">
<title>${escaped(shoot)}</title>
<style>${pageStyle}</style>
</head>
<body>
<header><h1>${escaped(shoot)}</h1><p class="quiet">revision ${escaped(revision)} · ${escaped(press.date)} · works without a network; ticks and figures stay on this phone until you give them back</p></header>
<main>
<label class="pick">Setup<select id="setup">${setups.map(({ setup, setupName }) => `<option value="${escaped(setup)}">${escaped(setupName)}</option>`).join('')}</select></label>
${setups.map(setupSection).join('\n')}
</main>
<footer><span id="said" role="status"></span><button id="give" type="button">Give back</button></footer>
<script type="application/json" id="about">${about}</script>
<script>${pageScript}</script>
</body>
</html>
`;
}

function setupSection(making: MakingOfSetup): string {
  const { setup, setupName } = making;
  const link = (name: string, says: string) => `<a href="#${escaped(`${setup}-${name}`)}">${says}</a>`;
  return `<section data-setup="${escaped(setup)}" aria-label="${escaped(setupName)}">
${state(making)}
<nav aria-label="In this setup">${link('cards', 'Lens cards')}${link('lines', 'Lines')}${link('checks', 'Checklist')}${link('problems', 'No picture?')}</nav>
<h2 id="${escaped(`${setup}-cards`)}">Lens cards</h2>${cards(making)}
<h2 id="${escaped(`${setup}-lines`)}">Lines</h2>${lines(making)}
<h2 id="${escaped(`${setup}-checks`)}">Checklist</h2>${checks(making)}
<h2 id="${escaped(`${setup}-problems`)}">Problem sheet</h2>${problems(making)}
</section>`;
}

function state(making: MakingOfSetup): string {
  const answers = answersOf(making);
  const [fails, unknown] = (['fails', 'unknown'] as const).map((wanted) => [...new Set(answers.filter(({ verdict }) => verdict === wanted).map(({ says }) => says))]) as [string[], string[]];
  if (fails.length + unknown.length === 0) return '';
  const [words, says] = fails.length > 0 ? ['This build fails', fails] : ['Not all of this is known', unknown];
  return `<div class="alarm"><strong>${words}</strong>${says.slice(0, 4).map((one) => `<p>${escaped(one)}</p>`).join('')}${says.length > 4 ? `<p>and ${says.length - 4} more: see the check.</p>` : ''}</div>`;
}

function cards(making: MakingOfSetup): string {
  const swaps = swapOrder(making).map(({ glass, shots }) => `<li>${escaped(glass)}: shots ${escaped(shots)}</li>`).join('');
  const all = making.glasses.map((glass) => lensCard(making, glass)).map(({ name, focal, squeeze, rows }) =>
    `<details><summary>${escaped(name)} <span class="quiet">${escaped([focal, squeeze].join(' '))}</span></summary><dl>${rows.map(({ label, says }) => `<dt>${escaped(label)}</dt><dd>${escaped(says)}</dd>`).join('')}</dl></details>`);
  return `${all.join('\n')}${swaps === '' ? '' : `<h3>Swaps in the order of the shots</h3><ol>${swaps}</ol>`}`;
}

function lines(making: MakingOfSetup): string {
  return rowsOf(making).map(({ number, from, to, cable, carries, faults }) =>
    `<div class="row"><b>${escaped(number)}</b><div>${escaped(`${from.piece}, ${from.socket}`)} → ${escaped(`${to.piece}, ${to.socket}`)}<p class="quiet">${escaped([cable, carries].filter((word) => word !== '').join(' · '))}</p>${faults.map((fault) => `<p><strong>◆ ${escaped(fault)}</strong></p>`).join('')}</div></div>`).join('\n');
}

function checks(making: MakingOfSetup): string {
  return checksOf(making).map(({ says, how, checks: some }) => `<h3>${escaped(says)}</h3>${how === '' ? '' : `<p class="quiet">${escaped(how)}</p>`}${some.map((check, at) => checkRow(making, says, check, at)).join('\n')}`).join('\n');
}

function checkRow({ setup }: MakingOfSetup, group: string, { id, says, expect, measure }: Check, at: number): string {
  const box = `t-${setup}-${group.replaceAll(/\W/g, '')}-${at}`;
  const unit = measure === undefined ? '' : inSystem({ value: 1, unit: measure.unit }, 'metric').unit;
  const field = measure === undefined ? '' : `<div class="measure"><input inputmode="decimal" autocomplete="off" data-figure="${escaped(measure.path)}" data-says="${escaped(measure.says)}"${measure.minus === undefined ? '' : ` data-minus="${measure.minus}"`} aria-label="${escaped(measure.says)}, ${escaped(unit)}"><span>${escaped(unit)} <span class="quiet">${escaped(measure.says)}</span></span></div>`;
  return `<div class="check"><input type="checkbox" id="${escaped(box)}" data-tick="${escaped(tickKey(setup, id))}"><label for="${escaped(box)}">${escaped(says)}${expect === '' ? '' : `<span class="quiet"><br>${escaped(expect)}</span>`}</label>${field}</div>`;
}

function problems(making: MakingOfSetup): string {
  return problemsOf(making).map(({ says, look }) => `<details><summary>${escaped(says)}</summary><ol>${look.map((step) => `<li>${escaped(step)}</li>`).join('')}</ol></details>`).join('\n');
}
