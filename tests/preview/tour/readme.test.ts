import { existsSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { tours } from '../../../src/preview/tour/tours';

const root = join(__dirname, '../../..');
const readme = readFileSync(join(root, 'README.md'), 'utf8');

test.each(tours)('the README tells the tour of $person step by step, with a picture', ({ id, steps }) => {
  steps.forEach(({ title }, index) => expect(readme).toContain(`${index + 1}. *${title}.*`));
  expect(readme).toContain(`](samples/pictures/${id}.png)`);
  expect(existsSync(join(root, `samples/pictures/${id}.png`))).toBe(true);
});
