import { readdirSync } from 'node:fs';
import { createRequire } from 'node:module';
import { join } from 'node:path';

const { generateCustomFunctionsMetadata } = createRequire(import.meta.url)('custom-functions-metadata');

/**
 * The metadata (functions.json) of all worksheet functions, from the JSDoc of src/functions.
 * @param {string} root the project's folder
 * @param {string} baseUrl where dist/ will stand
 * @returns {Promise<object>} metadata; throws with the generator's own sentences where the JSDoc is wrong
 */
export async function functionMetadata(root, baseUrl) {
  const folder = join(root, 'src/functions');
  const files = readdirSync(folder).filter(name => name.endsWith('.ts') && name !== 'register.ts');
  const result = await generateCustomFunctionsMetadata(files.sort().map(name => join(folder, name)));
  if (result.errors.length > 0) throw new Error(result.errors.join('\n'));
  const metadata = JSON.parse(result.metadataJson);
  metadata.allowErrorForDataTypeAny = true;
  for (const entry of metadata.functions) entry.helpUrl = `${baseUrl}/help/${entry.id}.html`;
  return metadata;
}
