import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';

/** Files of src/functions and the titles of their topics, in the order of the help. */
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

const lineOf = (comment, pattern) => pattern.exec(comment)?.[1].trim() ?? '';

function documented(topic, comment) {
  const [, call = '', gives = ''] = /@example (.*?\)) gives (.*)/.exec(comment) ?? [];
  return {
    topic,
    result: lineOf(comment, /@returns \{[^}]*\} (.*)/),
    source: lineOf(comment, /^Source: (.*)/m),
    example: { call: call.trim(), gives: gives.trim() },
  };
}

/**
 * The worksheet functions by topic: what functions.json says of each, with what only its JSDoc has (result, source, example).
 * @param {string} root the project's folder
 * @param {object} metadata functions.json
 * @returns {{ title: string, functions: object[] }[]}; throws where a file of src/functions has no topic here
 */
export function documentedFunctions(root, metadata) {
  const folder = join(root, 'src/functions');
  const said = new Map();
  for (const topic of Object.keys(TOPICS)) {
    const file = readdirSync(folder).find(name => name.toLowerCase() === `${topic}.ts`);
    for (const [, comment] of readFileSync(join(folder, file), 'utf8').matchAll(/\/\*\*([\s\S]*?)\*\//g)) {
      const text = comment.replace(/^\s*\* ?/gm, '');
      const id = lineOf(text, /@customfunction (\S+)/);
      if (id) said.set(id, documented(topic, text));
    }
  }
  const missing = metadata.functions.filter(({ id }) => !said.has(id)).map(({ id }) => id);
  if (missing.length > 0)
    throw new Error(
      `no help for ${missing.join(', ')}: src/functions has a file that scripts/help/documentedFunctions.mjs does not know`,
    );
  const functions = metadata.functions.map(entry => ({ ...entry, ...said.get(entry.id) }));
  return Object.entries(TOPICS).map(([topic, title]) => ({ title, functions: functions.filter(entry => entry.topic === topic) }));
}
