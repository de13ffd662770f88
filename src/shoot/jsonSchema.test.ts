import { Ajv2020 } from 'ajv/dist/2020.js';
import { readFileSync, readdirSync } from 'node:fs';
import { expect, test } from 'vitest';
import { jsonSchemaOf } from './jsonSchema.ts';

// Ajv, a general-purpose validator of JSON Schema 2020-12, stands outside: it knows the schema only as published.
const validate = new Ajv2020({ strict: false, validateFormats: false }).compile(jsonSchemaOf('shoot'));
const examples = new URL('../../examples/', import.meta.url);

test.each(readdirSync(examples).filter((file) => file.endsWith('.shoot.json')))('%s is valid by the published schema', (file) => {
  validate(JSON.parse(readFileSync(new URL(file, examples), 'utf8')));
  expect(validate.errors).toBeNull();
});

test('the published schema refuses what the program refuses, and lets unknown keys pass as it does', () => {
  const tiny = JSON.parse(readFileSync(new URL('tiny.shoot.json', examples), 'utf8')) as Record<string, unknown>;
  expect(validate({ ...tiny, setups: 3 })).toBe(false);
  expect(validate({ ...tiny, version: 'zero' })).toBe(false);
  expect(validate({ ...tiny, ownNotes: 'kept' })).toBe(true);
});
