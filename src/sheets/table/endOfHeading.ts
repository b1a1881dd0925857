/** How a heading names an end: `Die A`, `A die`, `Target (end A)`, `Reading A 1`. */
const END_WORDS: readonly (readonly [RegExp, 'A' | 'B'])[] = [
  [/[([]\s*(?:end )?a\s*[)\]]|^(?:end )?a[ :,-]+(?=\S)|(?<=\S)[ ,:-]+(?:end )?a$|(?<=\S) (?:at|of) end a$/i, 'A'],
  [/[([]\s*(?:end )?b\s*[)\]]|^(?:end )?b[ :,-]+(?=\S)|(?<=\S)[ ,:-]+(?:end )?b$|(?<=\S) (?:at|of) end b$/i, 'B'],
  [/(?<=^|\s)a ?(?=\d{1,2}$)/i, 'A'],
  [/(?<=^|\s)b ?(?=\d{1,2}$)/i, 'B'],
];

/** The ends that a heading may name, each with the heading without it. */
export function endsOfHeading(heading: string): readonly { readonly end: 'A' | 'B'; readonly rest: string }[] {
  return END_WORDS.flatMap(([pattern, end]) =>
    pattern.test(heading) ? [{ end, rest: heading.replace(pattern, ' ').replace(/\s+/g, ' ').trim() }] : [],
  );
}
