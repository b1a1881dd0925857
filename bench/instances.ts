import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import type { CutPlanProblem } from '../src/core/cutplan/cutPlan';
import { Decimal } from '../src/core/units/decimal';

/** One instance and, where it is known, the least loss in its own unit (pieces of stock for the classical families). */
export interface Instance {
  readonly family: string;
  readonly name: string;
  readonly problem: CutPlanProblem;
  readonly optimum: number | undefined;
}

interface ShopCase {
  readonly kerf: number;
  readonly squaring: number;
  readonly minRemnant: number;
  readonly pieces: readonly { len: number; qty: number }[];
  readonly stock: readonly { len: number; qty: number }[];
}

/** Classical text form: number of lengths, stock length, then `length quantity` lines. */
function classical(text: string): CutPlanProblem {
  const [count, stock, ...rest] = text.trim().split(/\s+/).map(Number);
  const pieces = Array.from({ length: count! }, (_, k) => ({ length: new Decimal(rest[2 * k]!), quantity: rest[2 * k + 1]! }));
  return { pieces, stock: [{ length: new Decimal(stock!) }], kerf: new Decimal(0), unit: 'mm' };
}

function shop(text: string): CutPlanProblem {
  const given = JSON.parse(text) as ShopCase;
  const rows = (list: ShopCase['pieces']) => list.map(({ len, qty }) => ({ length: new Decimal(len), quantity: qty }));
  return {
    pieces: rows(given.pieces),
    stock: rows(given.stock),
    kerf: new Decimal(given.kerf),
    squaring: new Decimal(given.squaring),
    keep: new Decimal(given.minRemnant),
    unit: 'mm',
  };
}

/** Every instance of the folder, in the order of its index. */
export function instances(folder: string): Instance[] {
  const [, ...lines] = readFileSync(join(folder, 'INDEX.tsv'), 'utf8').trim().split('\n');
  const present = new Set(readdirSync(folder, { recursive: true }).map(name => String(name).replace(/\\/g, '/')));
  return lines
    .map(line => line.split('\t'))
    .filter(([file]) => present.has(file!))
    .map(([file, family, , , , , , best]) => {
      const text = readFileSync(join(folder, file!), 'utf8');
      const isClassical = file!.endsWith('.csp');
      return {
        family: family!,
        name: file!,
        problem: isClassical ? classical(text) : shop(text),
        optimum: isClassical ? Number(best) : undefined,
      };
    });
}
