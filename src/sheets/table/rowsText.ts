/**
 * Rows of a sheet by their numbers: `row 5`, `rows 3, 5, 9`.
 * @param most so many are named, the others counted
 */
export function rowsText(rows: readonly number[], most = rows.length): string {
  const more = rows.length > most ? ` and ${rows.length - most} more` : '';
  return `${rows.length === 1 ? 'row' : 'rows'} ${rows.slice(0, most).join(', ')}${more}`;
}
