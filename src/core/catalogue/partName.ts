/**
 * A part's name as it is compared: without case and outer blanks; composed and decomposed accents are the same.
 * @example partKey(' Alder DN 25 ') === partKey('alder dn 25')
 */
export function partKey(name: string): string {
  const key = name.trim().toLowerCase();
  return /[^\u0000-\u007f]/.test(key) ? key.normalize('NFC') : key;
}

/** A heading or a field's name as it is compared: case, blanks and hyphens ignored. */
export function headingKey(heading: string): string {
  return heading.toLowerCase().replace(/[\s\u00a0\u002d\u2010-\u2015]+/g, '');
}
