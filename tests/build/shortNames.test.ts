import { readFileSync } from 'node:fs';
import { shortNames } from '../../scripts/rspack/shortNames.mjs';
import { builtFile } from '../builtFile';

const names = shortNames();

test('members of the cut plan’s solver and methods of decimal.js get short names, each its own', () => {
  expect([...names.keys()]).toEqual(expect.arrayContaining(['spendFlops', 'duals', 'minus', 'toDecimalPlaces']));
  expect(new Set(names.values()).size).toBe(names.size);
  for (const short of names.values()) expect(short).toMatch(/^[a-z]{1,2}$/);
});

test('no short name is one that a member of decimal.js, of the language or of the sources has by itself', () => {
  const taken = ['d', 'e', 's', 'eq', 'gt', 'lt', 'at', 'of', 'is', 'df'];
  expect([...names.values()].filter(short => taken.includes(short))).toEqual([]);
});

test('what Excel, the pane and the worker read keeps its name', () => {
  const read = [
    'associate',
    'onCanceled',
    'aborted',
    'basicType',
    'basicValue',
    'message',
    'code',
    'benchrowFunctions',
    'catalogueSource',
  ];
  const plan = ['pieces', 'kerf', 'squaring', 'handling', 'times', 'cuts', 'left', 'argument', 'received', 'advice'];
  expect([...read, ...plan].filter(name => names.has(name))).toEqual([]);
});

test('what the sources read from a message port keeps its name, since it is declared elsewhere', () => {
  expect(['port1', 'port2', 'onmessage', 'postMessage', 'close'].filter(name => names.has(name))).toEqual([]);
});

test('functions.js names the library it holds and its licence', () => {
  const script = readFileSync(builtFile('functions.js'), 'utf8');
  expect(script).toMatch(/^\/\*![^]*decimal\.js v[^]*Copyright[^]*MIT Licence/);
});
