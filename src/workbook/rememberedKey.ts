/** What is ours among the things that are kept with a workbook begins with this. */
const OURS = 'benchrow.';

/** Name under which a host keeps a text that is remembered with the workbook: `headings.Jobs` → `benchrow.headings.Jobs`. */
export function rememberedKey(key: string): string {
  return OURS + key;
}

/** The way back; undefined where the name is none of ours. */
export function keyRemembered(name: string): string | undefined {
  return name.startsWith(OURS) ? name.slice(OURS.length) : undefined;
}
