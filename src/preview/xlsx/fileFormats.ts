import type { Color, Fill, Font, Worksheet } from 'exceljs';

/** A rule of a file's conditional format, as the library reads it. */
export interface FileRule {
  readonly type: string;
  readonly priority?: number;
  readonly operator?: string;
  readonly formulae?: readonly (string | number)[];
  readonly style?: { readonly font?: Partial<Font>; readonly fill?: Fill };
  readonly rank?: number;
  readonly percent?: boolean;
  readonly bottom?: boolean;
  readonly aboveAverage?: boolean;
  readonly cfvo?: readonly { readonly type: string; readonly value?: number | string }[];
  readonly color?: Partial<Color> | readonly Partial<Color>[];
}

/** Rules that hold for the same cells: one block, or several parted by blanks. */
export interface FileFormat {
  readonly ref: string;
  readonly rules: readonly FileRule[];
}

/** The conditional formats of a file's sheet. */
export function fileFormats(worksheet: Worksheet): readonly FileFormat[] {
  return (worksheet as unknown as { conditionalFormattings?: FileFormat[] }).conditionalFormattings ?? [];
}
