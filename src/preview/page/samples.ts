/** File names of the sample workbooks that stand in dist/samples, set by the build. */
declare const SAMPLE_FILES: readonly string[];

/** A sample workbook to choose. */
export interface Sample {
  readonly file: string;
  /** As people read it: `Job sheet`. */
  readonly title: string;
}

/** The workbook to begin with. */
const FIRST = 'workshop.xlsx';

function sampleTitle(file: string): string {
  const words = file.replace(/\.xlsx$/, '').replace(/-/g, ' ');
  return words.charAt(0).toUpperCase() + words.slice(1);
}

/** The sample workbooks, the workshop first. */
export const samples: readonly Sample[] = [...SAMPLE_FILES]
  .sort((a, b) => Number(b === FIRST) - Number(a === FIRST) || a.localeCompare(b))
  .map(file => ({ file, title: sampleTitle(file) }));

/**
 * Fetches a sample workbook.
 * @throws Error with a sentence where it is not there
 */
export async function sampleBytes({ file, title }: Sample): Promise<Uint8Array> {
  const answer = await fetch(`samples/${file}`);
  if (!answer.ok) throw new Error(`The sample ${title} did not load (${answer.status}).`);
  return new Uint8Array(await answer.arrayBuffer());
}
