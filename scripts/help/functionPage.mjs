import { exampleSheet, letters } from './exampleSheet.mjs';
import { escaped } from './markup.mjs';

const header = (scope, text) => `<th scope="${scope}">${text}</th>`;

/** The example as the picture of a sheet: the cells it takes, and what the formula puts beside them. */
function sheetPicture(entry) {
  const { headings, rows, formula, result } = exampleSheet(entry);
  const width = Math.max(...result.map(row => row.length));
  const at = `${letters(headings.length)}2`;
  const columns = Array.from({ length: headings.length + width }, (_, column) => header('col', letters(column)));
  const names = headings.map(name => `<td class="name">${escaped(name)}</td>`).join('') + '<td></td>'.repeat(width);
  const body = Array.from({ length: Math.max(rows.length, result.length) }, (_, row) => {
    const given = headings.map((_, column) => `<td>${escaped(rows[row]?.[column] ?? '')}</td>`);
    const told = Array.from({ length: width }, (_, column) => {
      return row < result.length ? `<td class="result">${escaped(result[row][column] ?? '')}</td>` : '<td></td>';
    });
    return `<tr>${header('row', row + 2)}${given.join('')}${told.join('')}</tr>`;
  });
  return `<figure>
<p class="formula"><b>${at}</b> <code>${escaped(formula)}</code></p>
<div class="scroll" role="region" aria-label="Example as a sheet" tabindex="0"><table class="sheet">
<thead><tr><td></td>${columns.join('')}</tr></thead>
<tbody><tr>${header('row', 1)}${names}</tr>${body.join('\n')}</tbody></table></div>
<figcaption>${caption(entry, result)}</figcaption>
</figure>`;
}

function caption({ example }, result) {
  const invented = /Catalogue|Alder|Birch/.test(example.call) ? ' Parts and numbers are invented: never crimp from them.' : '';
  const isTable = result.length > 1 && result[0].length > 2;
  const table = isTable && result.at(-1)[0] !== 'Total' ? ' The table begins like this; more rows may follow.' : '';
  return `The shaded cells are the result.${table}${invented}`;
}

function argumentRow({ name, description, optional }) {
  return `<tr>${header('row', escaped(name))}<td>${escaped(description)}${optional ? ' <em>May be left out.</em>' : ''}</td></tr>`;
}

/** The name with its arguments, as it is typed: `HOSE.CUTLENGTH(overall, cutOffA, cutOffB, [allowance])`. */
export function signature({ id, parameters }) {
  return `HOSE.${id}(${parameters.map(({ name, optional }) => (optional ? `[${name}]` : name)).join(', ')})`;
}

/**
 * The help page of one worksheet function, from its `<h1>` on.
 * @param {object} entry the function, of documentedFunctions
 * @param {object[]} neighbours the functions of its topic
 */
export function functionPage(entry, neighbours) {
  const others = neighbours.filter(({ id }) => id !== entry.id).map(({ id }) => `<a href="${id}.html">${id}</a>`);
  return `<h1>${entry.id}</h1>
<p>${escaped(entry.description)}</p>
<p class="formula"><code>=${escaped(signature(entry))}</code></p>
<h2>Arguments</h2>
<table>${entry.parameters.map(argumentRow).join('\n')}</table>
<h2>Result and errors</h2>
<p>${escaped(entry.result)}</p>
<h2>Example</h2>
${sheetPicture(entry)}
${entry.source ? `<h2>Source</h2>\n<p class="source">${escaped(entry.source[0].toUpperCase() + entry.source.slice(1))}</p>` : ''}
${others.length > 0 ? `<h2>See also</h2>\n<nav aria-label="Functions of the same topic">${others.join(' ')}</nav>` : ''}`;
}
