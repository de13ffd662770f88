/** Holds every import of src against the table in walls.json, type imports included. Fails when it has read nothing. */
import { readFileSync, readdirSync } from 'node:fs';
import { join, relative, dirname } from 'node:path';
import { parseSync } from 'oxc-parser';

const root = new URL('../src', import.meta.url).pathname;
const { floors, packages, rootFiles } = JSON.parse(readFileSync(new URL('walls.json', import.meta.url), 'utf8'));
const PURE = new Set(['faults', 'units', 'standards', 'calc', 'shoot', 'assembly', 'check', 'propose', 'papers']);

const faults = [];
let imports = 0;
const files = readdirSync(root, { recursive: true, withFileTypes: true })
  .filter((entry) => entry.isFile() && /\.tsx?$/.test(entry.name) && !/\.test\.tsx?$/.test(entry.name))
  .map((entry) => relative(root, join(entry.parentPath, entry.name)));

for (const file of files) {
  const text = readFileSync(join(root, file), 'utf8');
  const { module, errors } = parseSync(file, text);
  if (errors.length > 0) faults.push(`${file}: does not parse`);
  const sources = [
    ...module.staticImports.map((one) => one.moduleRequest.value),
    ...module.staticExports.flatMap((one) => one.entries.flatMap((entry) => entry.moduleRequest?.value ?? [])),
    ...module.dynamicImports.map((one) => text.slice(one.moduleRequest.start + 1, one.moduleRequest.end - 1)),
  ];
  for (const source of new Set(sources)) {
    imports += 1;
    const fault = wallFault(file, source);
    if (fault !== undefined) faults.push(`${file}: ${fault}`);
  }
}

function wallFault(file, source) {
  const floor = file.includes('/') ? file.slice(0, file.indexOf('/')) : undefined;
  if (floor === undefined) return rootFiles.includes(file) ? undefined : 'stands outside the floors';
  const rule = floors[floor];
  if (rule === undefined) return `the floor "${floor}" is not in tools/walls.json`;
  if (source.startsWith('.')) {
    const target = relative(root, join(root, dirname(file), source)).split('/')[0];
    return target === floor || rule.may.includes(target) ? undefined : `${floor} may not import from ${target} (${source})`;
  }
  if (source.startsWith('node:')) return PURE.has(floor) ? `${floor} is pure and may not use ${source}` : undefined;
  const name = source.startsWith('@') ? source.split('/').slice(0, 2).join('/') : source.split('/')[0];
  const allowed = packages[name];
  if (floor === 'web') return undefined;
  return allowed?.includes(floor) ? undefined : `${floor} may not use the package ${name}; allow it in tools/walls.json or do without`;
}

if (files.length === 0 || imports === 0) faults.push(`read ${files.length} files and ${imports} imports: that cannot be all`);
for (const fault of faults) console.error(fault);
console.log(`walls: ${files.length} files, ${imports} imports, ${faults.length} faults`);
process.exit(faults.length > 0 ? 1 : 0);
