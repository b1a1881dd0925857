import { setFlagsFromString } from 'node:v8';
import { runInNewContext } from 'node:vm';
import { largeCatalogue } from '../tests/cases/largeCatalogue';
import { loadedFunctions } from './loadedFunctions';

/* What the functions' runtime keeps after many edits of a price: each makes another handle with its look-ups. */

const MB = 2 ** 20;
setFlagsFromString('--expose_gc');
const collect = runInNewContext('gc') as () => void;
const used = () => {
  collect();
  return process.memoryUsage().heapUsed / MB;
};

function editsOfPrices(count: number): void {
  const found = loadedFunctions();
  const { hoses, fittings, crimps, rates } = largeCatalogue(20, 50);
  const parts = Array.from({ length: 100 }, (_, row) => [`Alder hose ${row % 20}`]);
  for (let edit = 0; edit <= count; edit++) {
    const price = 10 + edit / 100;
    const edited = hoses.map((row, index) => (index === 1 ? [...row.slice(0, -1), price] : row));
    const handle = found.get('CATALOGUE')!(edited, fittings, crimps, null, rates, null, null, null, null, {});
    found.get('HOSEDATA')!(handle, parts, [['price per length']], {});
    if (edit === 50 || edit === 500 || edit === count) console.log(`  after ${edit} edits of a price    ${used().toFixed(1)} MB`);
  }
}

const EDITS = Number(process.env.EDITS ?? 2000);
editsOfPrices(EDITS);
