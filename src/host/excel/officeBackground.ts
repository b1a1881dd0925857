/** Background of Office's own theme as `#rrggbb`; undefined outside Office, and in an Office that does not tell. */
export function officeBackground(): string | undefined {
  return typeof Office === 'undefined' ? undefined : Office.context?.officeTheme?.bodyBackgroundColor;
}
