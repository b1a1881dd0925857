import { partField } from '../../../core/catalogue/partField';
import { fittingsTable } from '../../../core/catalogue/tables/fittingsTable';
import { hosesTable } from '../../../core/catalogue/tables/hosesTable';
import { TradeError } from '../../../core/tradeError';
import { blankKey, rowFormula } from './conditions';
import { given, type NativeArgument, type NativeFunction } from './nativeFunction';
import { NotNative } from '../notNative';
import { orBlank, partsOf, requireShort, trimmed } from './partNames';
import { stays } from './words';

function fieldOf(table: 'hoses' | 'fittings', { value }: NativeArgument): string {
  try {
    const text = String(value ?? '');
    return table === 'hoses' ? partField(hosesTable, text) : partField(fittingsTable, text);
  } catch (error) {
    if (error instanceof TradeError) throw new NotNative('the field is not known');
    throw error;
  }
}

const dataOf = (table: 'hoses' | 'fittings'): NativeFunction => ({
  arguments: ['catalogue', 'name', 'word'],
  width: 1,
  row(call, context) {
    const parts = partsOf(context);
    const [part, word] = [given(call, 1), given(call, 2)];
    requireShort(part);
    const row = table === 'hoses' ? parts.hoseRow(trimmed(part)) : parts.fittingRow(trimmed(part));
    const field = parts.field(table, fieldOf(table, word), row);
    const refused = parts.refusedNames([trimmed(part)]);
    const ofCall = stays(word, String(word.value).trim().replace(/"/g, '""'));
    const result = field ? orBlank(field) : `IF(ISNA(${row}),NA(),"")`;
    return [rowFormula(blankKey(part), refused, result, ofCall)];
  },
});

export const hoseData = dataOf('hoses');
export const fittingData = dataOf('fittings');
