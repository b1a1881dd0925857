import { createRequire } from 'node:module';

/* jsdom asks for each element whether each of the thousands of rules of Fluent UI matches it, and writes a program for each rule anew, since its selector
   library keeps a thousand of them. That took a third of the time of component tests. Here rules are looked up by the class or tag that their selector
   ends in, and only those few are asked; everything else about styles is jsdom's own. */

const inJsdom = createRequire(createRequire(import.meta.url).resolve('jsdom'));
const styleRules = inJsdom('./jsdom/living/helpers/style-rules.js');
const { matchesDontThrow } = inJsdom('./jsdom/living/helpers/selectors.js');
const defaultStyles = inJsdom('rrweb-cssom').parse(inJsdom('./jsdom/browser/default-stylesheet.js'));
const { CSSStyleDeclaration } = inJsdom('cssstyle');

/** The keys of rules whose selector ends in neither a class nor a tag, and of those that cannot be split. */
const ANY = '*';

/** What an element must have so that a selector can match it: `.class`, `tag` or anything. */
function keyOf(selector) {
  const last = selector
    .replace(/\[[^\]]*\]/g, '')
    .trim()
    .split(/[\s>+~]+/)
    .at(-1);
  const [ofClass] = last.match(/\.[-\w]+/) ?? [];
  return ofClass ?? last.match(/^[a-z][-\w]*/i)?.[0].toLowerCase() ?? ANY;
}

function keysOf(selectors) {
  if (/["'\\|]/.test(selectors)) return [ANY];
  let flat = selectors;
  for (let before = ''; before !== flat;) [before, flat] = [flat, flat.replace(/\([^()]*\)/g, '')];
  return [...new Set(flat.split(',').map(keyOf))];
}

/** The rules of a sheet that can match anything on a screen, in their order, by their keys. */
class IndexedSheet {
  #length = 0;
  #last;
  #byKey = new Map();
  #count = 0;

  constructor(sheet) {
    this.sheet = sheet;
  }

  /** Takes in what was added at the end; false where the sheet was changed otherwise. */
  takeIn() {
    const { cssRules } = this.sheet;
    if (this.#length > 0 && cssRules[this.#length - 1] !== this.#last) return false;
    for (; this.#length < cssRules.length; this.#length++) this.#addRule(cssRules[this.#length]);
    this.#last = cssRules[this.#length - 1];
    return true;
  }

  #addRule(rule) {
    if (!rule.media) this.#add(rule);
    else if (Array.from(rule.media).includes('screen')) for (const inner of rule.cssRules) this.#add(inner);
  }

  #add({ selectorText, style }) {
    if (!selectorText) return;
    const isPlainClass = /^\.[-\w]+$/.test(selectorText);
    const entry = { place: this.#count++, selectorText, style, isPlainClass };
    for (const key of keysOf(selectorText)) {
      if (!this.#byKey.has(key)) this.#byKey.set(key, []);
      this.#byKey.get(key).push(entry);
    }
  }

  matching(element, keys) {
    const found = new Set();
    for (const key of keys) {
      for (const entry of this.#byKey.get(key) ?? []) {
        if (entry.isPlainClass || matchesDontThrow(element, entry.selectorText)) found.add(entry);
      }
    }
    return [...found].sort((a, b) => a.place - b.place);
  }
}

const indexes = new WeakMap();

function indexOf(sheet) {
  const known = indexes.get(sheet);
  if (known?.takeIn()) return known;
  const fresh = new IndexedSheet(sheet);
  fresh.takeIn();
  indexes.set(sheet, fresh);
  return fresh;
}

/** As jsdom does it: a later rule counts more, whatever its selector. */
function apply(style, declaration) {
  for (let k = 0; k < style.length; k++) {
    const property = style[k];
    const value = style.getPropertyValue(property);
    if (value === 'unset') declaration.removeProperty(property);
    else declaration.setProperty(property, value, style.getPropertyPriority(property));
  }
}

const ofJsdom = styleRules.getDeclarationForElement;

styleRules.getDeclarationForElement = element => {
  const document = element._ownerDocument;
  // There, classes are the same in capital and small letters.
  if (document.compatMode === 'BackCompat') return ofJsdom(element);
  document._styleCache ??= new WeakMap();
  const known = document._styleCache.get(element);
  if (known) return known;
  const declaration = new CSSStyleDeclaration();
  const classes = element.getAttributeNS(null, 'class')?.match(/[^\s]+/g) ?? [];
  const keys = [ANY, element._localName.toLowerCase(), ...new Set(classes.map(name => `.${name}`))];
  for (const sheet of [defaultStyles, ...document.styleSheets._list]) {
    for (const { style } of indexOf(sheet).matching(element, keys)) apply(style, declaration);
  }
  apply(element.style, declaration);
  document._styleCache.set(element, declaration);
  return declaration;
};

// Loaded after the change above, since jsdom's window takes the function when it is loaded.
const { TestEnvironment } = await import('jest-environment-jsdom');

/** jsdom for component tests. */
export default TestEnvironment;
