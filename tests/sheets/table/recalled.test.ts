import * as v from 'valibot';
import { recalled } from '../../../src/sheets/table/recalled';

const Names = v.array(v.string());
const fallback = ['none'];
const memory = (text: string | undefined) => ({ recall: (key: string) => Promise.resolve(key === 'names' ? text : 'wrong key') });

test.each<[string, string | undefined, readonly string[]]>([
  ['what was remembered', '["Alder","Beech"]', ['Alder', 'Beech']],
  ['nothing remembered', undefined, fallback],
  ['text that is no JSON', '["Alder"', fallback],
  ['empty text', '', fallback],
  ['JSON of another form', '{"Alder":1}', fallback],
  ['a list with something else in it', '["Alder",2]', fallback],
])('a memory with %s', async (_, text, expected) => {
  expect(await recalled(memory(text), 'names', Names, fallback)).toEqual(expected);
});
