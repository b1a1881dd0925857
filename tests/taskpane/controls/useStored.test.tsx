/** @jest-environment ./tests/quickJsdom.mjs */
import { act, renderHook } from '@testing-library/react';
import { useStored } from '../../../src/taskpane/controls/useStored';

const KEY = 'benchrow.bench';
const FRESH = { machine: '', isOpen: false, count: 3, entries: [] as unknown[] };
const shown = () => renderHook(() => useStored('bench', FRESH)).result.current[0];

beforeEach(() => localStorage.clear());

test.each<[string, string, object]>([
  ['nothing', '', FRESH],
  ['no JSON', '{', FRESH],
  ['null', 'null', FRESH],
  ['a text', '"Bench 1"', FRESH],
  ['a list', '[1, 2]', FRESH],
  ['a number where a text was', '{"machine": 7}', FRESH],
  ['an object where a text was', '{"machine": {"name": "Bench 1"}, "count": 5}', { ...FRESH, count: 5 }],
  ['null where a list was', '{"entries": null, "isOpen": true}', { ...FRESH, isOpen: true }],
  ['a text where yes or no was', '{"isOpen": "yes", "machine": "Bench 1"}', { ...FRESH, machine: 'Bench 1' }],
  ['fields of another version', '{"machine": "Bench 1", "colour": 4}', { ...FRESH, machine: 'Bench 1' }],
])('a storage that holds %s gives fields of the right type', (_, stored, expected) => {
  if (stored) localStorage.setItem(KEY, stored);
  expect(shown()).toEqual(expected);
});

test('a change is kept, and what another version keeps is not lost by it', () => {
  localStorage.setItem(KEY, '{"colour": 4}');
  const { result } = renderHook(() => useStored('bench', FRESH));
  act(() => result.current[1]({ machine: 'Bench 2' }));
  expect(result.current[0].machine).toBe('Bench 2');
  expect(JSON.parse(localStorage.getItem(KEY)!)).toEqual({ colour: 4, machine: 'Bench 2' });
  expect(shown().machine).toBe('Bench 2');
});
