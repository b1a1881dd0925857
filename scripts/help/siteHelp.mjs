import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { helpPolicy } from '../contentSecurity.mjs';
import { documentedFunctions } from './documentedFunctions.mjs';
import { functionPage, signature } from './functionPage.mjs';
import { escaped, filled } from './markup.mjs';

/** What the search of the first page looks through: name, sentence, arguments and their help, result. */
const wordsOf = ({ id, description, parameters, result }) =>
  [id, description, ...parameters.flatMap(({ name, description: help }) => [name, help]), result].join(' ').toLowerCase();

function listItem(entry) {
  return `<li id="${entry.id}" data-words="${escaped(wordsOf(entry))}"><a href="help/${entry.id}.html">${entry.id}</a> ${escaped(entry.description)}</li>`;
}

function topicList({ title, functions }) {
  return `<section><h2>${title}</h2>\n<ul>${functions.map(listItem).join('\n')}</ul></section>`;
}

/**
 * The help: `help.html`, where every function is found by topic or by searching, and one page a function under `help/`.
 * All of it is text: nothing is asked of elsewhere, so that it also serves without a network.
 * @param {string} root the project's folder
 * @param {object} metadata functions.json
 * @returns {[name: string, html: string][]}
 */
export function siteHelp(root, metadata) {
  const read = name => readFileSync(join(root, 'manifest/help', name), 'utf8');
  const parts = { STYLE: `<style>${read('help.css')}</style>`, CAUTION: read('caution.html') };
  const page = (template, more) => {
    const html = filled(template, { ...parts, ...more });
    return filled(html, { POLICY: helpPolicy(html) });
  };
  const topics = documentedFunctions(root, metadata).filter(({ functions }) => functions.length > 0);
  const index = page(read('index.html'), {
    FUNCTIONS: topics.map(topicList).join('\n'),
    SCRIPT: `<script>${read('search.js')}</script>`,
  });
  const template = read('function.html');
  const pages = topics.flatMap(({ functions }) =>
    functions.map(entry => {
      const html = page(template, { TITLE: escaped(signature(entry)), FUNCTION: functionPage(entry, functions) });
      return [`help/${entry.id}.html`, html];
    }),
  );
  return [['help.html', index], ...pages];
}
