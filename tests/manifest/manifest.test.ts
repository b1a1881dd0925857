/** @jest-environment ./tests/quickJsdom.mjs */
import { existsSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { builtFile } from '../builtFile';
import { manifestProblems } from './manifestProblems';

const dist = join(__dirname, '../../dist');
const BASE = 'https://localhost:3000/';

/** Width and height as a PNG file's header tells them (ISO/IEC 15948, 11.2.2). */
function iconSize(url: string): { width: number; height: number } | undefined {
  const file = join(dist, url.replace(BASE, ''));
  if (!existsSync(file)) return undefined;
  const bytes = readFileSync(file);
  return bytes.toString('latin1', 1, 4) === 'PNG' ? { width: bytes.readUInt32BE(16), height: bytes.readUInt32BE(20) } : undefined;
}

const manifest = readFileSync(builtFile('manifest.xml'), 'utf8');
const problems = (xml: string) => manifestProblems(new DOMParser().parseFromString(xml, 'application/xml'), iconSize);

test('the built manifest has no problem that can be found without Microsoft’s service', () => {
  expect(problems(manifest)).toEqual([]);
});

test('the pages and files that the manifest names are built', () => {
  const named = [...manifest.matchAll(/DefaultValue="https:\/\/localhost:3000\/([^"]+)"/g)].map(([, name]) => name!);
  expect(named.filter(name => !existsSync(join(dist, name)))).toEqual([]);
});

test.each<[string, (xml: string) => string, RegExp]>([
  [
    'elements in the wrong order',
    xml => xml.replace(/(<Version>.*<\/Version>)([\s\S]*?)(<ProviderName>.*<\/ProviderName>)/, '$3$2$1'),
    /Version must stand before/,
  ],
  ['a resid that nothing defines', xml => xml.replace('resid="Help.Url"', 'resid="Help.Page"'), /Help.Page is not defined/],
  [
    'an address without HTTPS',
    xml => xml.replaceAll('https://localhost:3000/help.html', 'http://localhost:3000/help.html'),
    /not HTTPS/,
  ],
  ['an icon of another size', xml => xml.replace('icons/80.png', 'icons/64.png'), /Icon.80 is not 80/],
  ['an icon that is not there', xml => xml.replaceAll('icons/16.png', 'icons/17.png'), /Icon.16 is not 16/],
  ['a runtime that ends with the pane', xml => xml.replace('lifetime="long"', 'lifetime="short"'), /no long lifetime/],
  [
    'functions in a runtime of their own',
    xml => xml.replace(/(<Page>\s*<SourceLocation resid=")[^"]+/, '$1Help.Url'),
    /Page does not use the shared runtime/,
  ],
  ['another namespace', xml => xml.replace('DefaultValue="HOSE"', 'DefaultValue="TUBE"'), /the namespace is TUBE/],
  ['an Excel that cannot lay out pages let in', xml => xml.replace(/<Set Name="ExcelApi"[^>]*>/, ''), /ExcelApi 1.9 is missing/],
  [
    'perpetual Excel let in',
    xml => xml.replace('Name="CustomFunctionsRuntime" MinVersion="1.4"', 'Name="CustomFunctionsRuntime" MinVersion="1.3"'),
    /CustomFunctionsRuntime 1.4 is missing/,
  ],
  [
    'a pane of its own',
    xml => xml.replace('<Action xsi:type="ShowTaskpane">', '$&<TaskpaneId>Other</TaskpaneId>'),
    /TaskpaneId stands against the shared runtime/,
  ],
  ['a version that is refused', xml => xml.replace(/<Version>.*</, '<Version>0.9.0.0<'), /lower than 1.0.0.0/],
  ['no shared runtime asked for', xml => xml.replace(/<Set Name="SharedRuntime"[^>]*>/, ''), /SharedRuntime 1.1 is missing/],
  [
    'a resource id of more than 32 characters',
    xml => xml.replaceAll('Functions.Metadata.Url', 'Functions.Metadata.Of.Every.Worksheet.Url'),
    /longer than 32 characters/,
  ],
  [
    'a resource that is defined twice',
    xml => xml.replace(/(<bt:Url id="Help\.Url"[^>]*\/>)/, '$1$1'),
    /resource Help\.Url is defined twice/,
  ],
  [
    'a resource that nothing uses',
    xml => xml.replace(/(<bt:Url id=")Help\.Url("[^>]*\/>)/, '$&$1Spare.Url$2'),
    /resource Spare\.Url is not used/,
  ],
  ['an Id that is no GUID', xml => xml.replace(/<Id>.{8}-/, '<Id>'), /is no GUID/],
  ['an Id in braces', xml => xml.replace(/<Id>(.*)<\/Id>/, '<Id>{$1}</Id>'), /is no GUID/],
  ['a version of three parts', xml => xml.replace(/<Version>(.*)\.0<\/Version>/, '<Version>$1</Version>'), /is not a\.b\.c\.d/],
  ['a version with a word', xml => xml.replace(/<Version>.*</, '<Version>1.0.0-beta.1<'), /is not a\.b\.c\.d/],
  [
    'an element that the schema does not know',
    xml => xml.replace('<Permissions>', '<Licence>MIT</Licence><Permissions>'),
    /must not hold Licence/,
  ],
  [
    'a short string that is too long',
    xml => xml.replace(/(<bt:String id="Start\.Title" DefaultValue=")/, `$1${'long '.repeat(26)}`),
    /Start\.Title is too long/,
  ],
  [
    'a long string that is too long',
    xml => xml.replace(/(<bt:String id="Button\.Tip" DefaultValue=")/, `$1${'long '.repeat(51)}`),
    /Button\.Tip is too long/,
  ],
  [
    'a description that is too long',
    xml => xml.replace('<Description DefaultValue="', `$&${'long '.repeat(51)}`),
    /Description is too long/,
  ],
  ['broken XML', xml => xml.replace('</Hosts>', ''), /not well-formed/],
])('the check finds %s', (_, breakIt, expected) => {
  const broken = breakIt(manifest);
  expect(broken).not.toBe(manifest);
  expect(problems(broken).join('\n')).toMatch(expected);
});
