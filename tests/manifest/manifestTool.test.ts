import { execFileSync } from 'node:child_process';
import { join } from 'node:path';
import { builtFile } from '../builtFile';

const root = join(__dirname, '../..');

test('Microsoft’s own reader takes the built manifest and finds what we put in', () => {
  // In a process of its own: the reader mixes module kinds that Node takes and jest does not.
  const read = `require('office-addin-manifest').OfficeAddinManifest.readManifestFile(${JSON.stringify(builtFile('manifest.xml'))}).then(info => console.log(JSON.stringify(info)))`;
  const info = JSON.parse(execFileSync(process.execPath, ['-e', read], { cwd: root, encoding: 'utf8' }));
  expect(info).toMatchObject({
    displayName: 'Benchrow',
    officeAppType: 'TaskPaneApp',
    permissions: 'ReadWriteDocument',
    hosts: ['Workbook'],
  });
  expect(info.version).toMatch(/^\d+\.\d+\.\d+\.0$/);
  expect(info.defaultSettings.sourceLocation).toBe('https://localhost:3000/taskpane.html');
});
