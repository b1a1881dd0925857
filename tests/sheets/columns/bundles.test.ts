import { bundlesOf } from '../../../src/sheets/columns/bundles';
import { offersFor } from '../../../src/sheets/columns/offers';
import type { CatalogueState } from '../../../src/sheets/catalogue/catalogueState';
import type { Role } from '../../../src/sheets/columns/columnRoles';

const CATALOGUE: CatalogueState = { present: true, unit: 'mm', diameterUnit: 'mm', pressureUnit: 'bar', massUnit: 'kg' };
const columnsOf = (...roles: readonly Role[]) =>
  Object.fromEntries(roles.map((role, index) => [role, { first: index, last: index }]));
const JOB: readonly Role[] = ['hose', 'fittingA', 'fittingB', 'overall', 'quantity'];

const bundles = (roles: readonly Role[], catalogue = CATALOGUE, margin?: string) =>
  bundlesOf(offersFor({ columns: columnsOf(...roles), catalogue, units: { overall: 'mm' } }, { margin }));

test('a job table gets what the bench needs and what a price needs; QA waits for readings', () => {
  const [bench, price, qa] = bundles(JOB, CATALOGUE, '0.4');
  expect(bench!.offers.map(({ heading }) => heading)).toEqual([
    ...['Cut length', 'Assembly check', 'Die A', 'Dial A', 'Crimp diameter A', 'Insertion depth A'],
    ...['Die B', 'Dial B', 'Crimp diameter B', 'Insertion depth B'],
  ]);
  expect(price!.offers.map(({ heading }) => heading)).toEqual(['Working pressure', 'Mass', 'Cost each', 'Price each']);
  expect(qa!.offers).toEqual([]);
  expect(qa!.lacking[0]!.reason).toMatch(/^Needs a column for: Readings/);
});

test('readings of crimps get what they are judged by beside the verdict, where the table lacks it', () => {
  const [, , qa] = bundles(['hose', 'fittingA', 'readings', 'dial', 'step']);
  expect(qa!.offers.map(({ heading }) => heading)).toEqual([
    ...['Crimp diameter', 'Tolerance', 'Verdict', 'Deviation', 'Next dial'],
  ]);
  const [, , own] = bundles(['readings', 'target', 'tolerance', 'dial', 'step']);
  expect(own!.offers.map(({ heading }) => heading)).toEqual(['Verdict', 'Deviation', 'Next dial']);
});

test('what cannot be added is said with its reason and keeps the rest from nothing', () => {
  const [, price] = bundles(JOB);
  expect(price!.offers.map(({ id }) => id)).toEqual(['pressure', 'mass', 'cost']);
  expect(price!.lacking).toEqual([{ reason: expect.stringMatching(/^Needs a margin/), headings: ['Price each'] }]);
});

test('without parts data only what takes none can be added', () => {
  const [bench, price] = bundles(['overall', 'cutOffA', 'cutOffB'], { present: false });
  expect(bench!.offers.map(({ id }) => id)).toEqual(['cutLength']);
  expect(price!.offers).toEqual([]);
});

test('added columns have number formats that fit: cut lengths to the step of the bench, masses and money with two decimals', () => {
  const [bench, price] = bundles(JOB, CATALOGUE, '0.4');
  const formats = Object.fromEntries([...bench!.offers, ...price!.offers].map(({ id, format }) => [id, format]));
  expect(formats).toMatchObject({
    cutLength: '0',
    diameterA: '0.00',
    insertionB: '0.0',
    mass: '0.00',
    cost: '0.00',
    price: '0.00',
  });
  expect([formats.dieA, formats.dialA, formats.assembly]).toEqual([undefined, undefined, undefined]);
});
