import { metadata } from './excelCall';
import { listFunctions } from './listFunctions';
import { lookupFunctions } from './lookupFunctions';
import { rowFunctions } from './rowFunctions';

/** Functions without rows that answer with a table or a handle: they are told by the tests of the catalogue. */
const tableFunctions = ['CATALOGUE', 'FINDHOSE', 'FINDFITTING', 'FINDTHREAD'];

const withRows = [...rowFunctions, ...lookupFunctions].map(({ id }) => id);
const withoutRows = [...listFunctions.map(({ id }) => id), ...tableFunctions];

test('every function of functions.json is called by one contract, and by one only', () => {
  expect([...withRows, ...withoutRows].sort()).toEqual(metadata.functions.map(({ id }) => id).sort());
});

/** A row-wise argument says so in its help; readings say it as one crimp a row. */
const BY_ROW = /\bone value or a column\b/;

test.each(metadata.functions.filter(({ parameters }) => parameters.some(({ description }) => BY_ROW.test(description))))(
  '$id tells people that it works row by row, so it keeps the contract of rows',
  ({ id }) => expect(withRows).toContain(id),
);

test('a row-wise argument of the contract is one in its help, and none is told to be one without being called so', () => {
  for (const { id, arguments: called, key } of rowFunctions) {
    const { parameters } = metadata.functions.find(described => described.id === id)!;
    const message = parameters
      .filter(({ name, description }) => name === key || BY_ROW.test(description))
      .map(({ name }) => name);
    expect([id, Object.keys(called).filter(name => 'row' in called[name]!)]).toEqual([id, message]);
  }
});
