import { readdirSync, readFileSync } from 'node:fs';
import { Ajv } from 'ajv';
import formats from 'ajv-formats';

const SCHEMAS = new URL('./', import.meta.url);

/** The validator refuses `nullable` without a type, as OpenAPI has it. Left out, a schema only lets less pass. */
function withoutNullable(key: string, value: unknown): unknown {
  return key === 'nullable' ? undefined : value;
}

/** All schemas of the standard that the events use, each under its place in the standard's folders. */
function judge(): Ajv {
  // Formats are judged; keywords of OpenAPI, which JSON schema does not know, are let pass.
  const ajv = new Ajv({ strict: false, allErrors: true });
  formats.default(ajv);
  for (const path of readdirSync(SCHEMAS, { recursive: true, encoding: 'utf8' })) {
    if (path.endsWith('.json')) {
      const schema: unknown = JSON.parse(readFileSync(new URL(path, SCHEMAS), 'utf8'), withoutNullable);
      ajv.addSchema(schema as object, `ade:/${path}`);
    }
  }
  return ajv;
}

const ajv = judge();

/** What the published schema of a resource says against a value, which goes through text as it would to others. */
export function faultsOf(resource: string, value: unknown): string[] {
  const validate = ajv.getSchema(`ade:/resources/icar${resource}Resource.json`);
  if (validate === undefined) throw new Error(`no schema of ${resource}`);
  return validate(JSON.parse(JSON.stringify(value)))
    ? []
    : (validate.errors ?? []).map(({ instancePath, message }) => `${instancePath} ${message}`);
}
