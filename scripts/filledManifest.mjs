/**
 * The manifest with its placeholders filled in.
 * @param {string} template manifest/manifest.xml
 * @param {{ baseUrl: string, version: string }} values baseUrl: where dist/ will stand; version: of package.json, a.b.c
 */
export function filledManifest(template, { baseUrl, version }) {
  // Lower ones are refused when the manifest is uploaded.
  if (!/^[1-9]\d*\.\d+\.\d+$/.test(version)) throw new Error(`version of package.json must be 1.0.0 or higher, not ${version}`);
  const values = { BASE_URL: escaped(baseUrl), ORIGIN: new URL(baseUrl).origin, VERSION: `${version}.0` };
  return template.replace(/\{([A-Z_]+)\}/g, (whole, name) => {
    if (!(name in values)) throw new Error(`manifest.xml has a placeholder without a value: ${whole}`);
    return values[name];
  });
}

const escaped = text => text.replace(/&/g, '&amp;').replace(/</g, '&lt;').replace(/"/g, '&quot;');
