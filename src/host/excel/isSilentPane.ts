/**
 * Whether downloads and print windows of a pane do nothing here, without an error: Office for Mac, and for iPad, which has no windows either.
 * Source: OfficeDev/office-js issue 3385 ("file download link and window.print() doesn't work in Officejs addin for Mac").
 */
export function isSilentPane(): boolean {
  if (typeof Office === 'undefined' || !Office.context?.platform) return false;
  return Office.context.platform === Office.PlatformType.Mac || Office.context.platform === Office.PlatformType.iOS;
}
