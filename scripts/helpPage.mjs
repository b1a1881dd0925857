import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { helpPolicy } from './contentSecurity.mjs';

const TOPICS = {
  length: 'Length',
  crimp: 'Crimp',
  quality: 'Dial and charts',
  causes: 'Machine, die or setting',
  gauges: 'Gauge',
  catalogue: 'Catalogue',
  parts: 'Parts',
  threads: 'Threads',
  assembly: 'Assembly',
  cutplan: 'Cut plan',
  hydraulics: 'Fluid',
  price: 'Price',
};

/** What the JSDoc of the worksheet functions says beyond functions.json: topic, result with its errors, source, example. */
function documentation(root) {
  const folder = join(root, 'src/functions');
  const entries = Object.keys(TOPICS).flatMap(topic => {
    const file = readdirSync(folder).find(name => name.toLowerCase() === `${topic}.ts`);
    const text = file ? readFileSync(join(folder, file), 'utf8') : '';
    return [...text.matchAll(/\/\*\*([\s\S]*?)\*\//g)].map(([, comment]) => ({
      topic,
      comment: comment.replace(/^\s*\* ?/gm, ''),
    }));
  });
  const line = (comment, pattern) => pattern.exec(comment)?.[1].trim() ?? '';
  return new Map(
    entries
      .map(({ topic, comment }) => [
        line(comment, /@customfunction (\S+)/),
        {
          topic,
          result: line(comment, /@returns \{[^}]*\} (.*)/),
          source: line(comment, /^Source: (.*)/m),
          examples: [...comment.matchAll(/@example (.*)/g)].map(([, example]) => example.trim()),
        },
      ])
      .filter(([id]) => id !== ''),
  );
}

const escaped = text => text.replace(/&/g, '&amp;').replace(/</g, '&lt;').replace(/>/g, '&gt;').replace(/"/g, '&quot;');

function section({ id, description, parameters }, { result, source, examples }) {
  const names = parameters.map(({ name, optional }) => (optional ? `[${name}]` : name)).join(', ');
  const rows = parameters.map(({ name, description: help, optional }) => {
    return `<tr><th scope="row">${escaped(name)}</th><td>${escaped(help)}${optional ? ' <em>May be left out.</em>' : ''}</td></tr>`;
  });
  return `<section id="${id}">
<h3><code>=HOSE.${id}(${escaped(names)})</code></h3>
<p>${escaped(description)}</p>
<table>${rows.join('\n')}</table>
<p><strong>Gives:</strong> ${escaped(result)}</p>
${examples.map(example => `<p><strong>Example:</strong> <code>${escaped(example.split(' gives ')[0])}</code> gives ${escaped(example.split(' gives ').slice(1).join(' gives '))}</p>`).join('\n')}
${source ? `<p class="source">Source: ${escaped(source)}</p>` : ''}
</section>`;
}

/**
 * The help page: every worksheet function with its arguments, result, errors and example; one anchor a function.
 * @param {string} root the project's folder
 * @param {object} metadata functions.json
 * @returns {string} HTML
 */
export function helpPage(root, metadata) {
  const documented = documentation(root);
  const byTopic = Object.entries(TOPICS).map(([topic, title]) => {
    const functions = metadata.functions.filter(({ id }) => documented.get(id)?.topic === topic);
    return { title, functions };
  });
  const filled = byTopic.filter(({ functions }) => functions.length > 0);
  const missing = metadata.functions.filter(({ id }) => !documented.has(id)).map(({ id }) => id);
  if (missing.length > 0)
    throw new Error(`no help for ${missing.join(', ')}: src/functions has a file that scripts/helpPage.mjs does not know`);
  const links = filled.map(
    ({ title, functions }) =>
      `<p><strong>${title}</strong> ${functions.map(({ id }) => `<a href="#${id}">${id}</a>`).join(' ')}</p>`,
  );
  const sections = filled.map(
    ({ title, functions }) => `<h2>${title}</h2>\n${functions.map(entry => section(entry, documented.get(entry.id))).join('\n')}`,
  );
  const template = readFileSync(join(root, 'manifest/help.html'), 'utf8');
  return template
    .replace('{POLICY}', () => helpPolicy(template))
    .replace('{LINKS}', () => links.join('\n'))
    .replace('{FUNCTIONS}', () => sections.join('\n'));
}
