// Lets Node import the TypeScript sources as they stand (no type check): node --import ./scripts/typescriptLoader.mjs …
import { existsSync } from 'node:fs';
import { readFile } from 'node:fs/promises';
import { register } from 'node:module';
import { fileURLToPath } from 'node:url';
import { isMainThread } from 'node:worker_threads';
import { transform } from '@swc/core';

if (isMainThread) register(import.meta.url);

export async function resolve(specifier, context, next) {
  if (specifier.startsWith('.') && context.parentURL) {
    const url = new URL(`${specifier}.ts`, context.parentURL);
    if (existsSync(fileURLToPath(url))) return { url: url.href, shortCircuit: true, format: 'module' };
  }
  return next(specifier, context);
}

export async function load(url, context, next) {
  if (!url.endsWith('.ts')) return next(url, context);
  const source = await readFile(fileURLToPath(url), 'utf8');
  const { code } = await transform(source, { filename: url, jsc: { parser: { syntax: 'typescript' }, target: 'es2022' } });
  return { format: 'module', source: code, shortCircuit: true };
}
