import { lengthRatio } from '../../../core/catalogue/lengthPer';
import { anyOf, blankKey, refusedNumber, rounded } from './conditions';
import { given, refuseMarks, type NativeArgument, type NativeArguments, type NativeContext } from './nativeFunction';
import { NotNative } from '../notNative';
import type { CopiedParts } from '../parts/copiedParts';
import { partsOf, requireShort, trimmed } from './partNames';

/** One end: the rows where its data stand, as expressions. */
interface NativeEnd {
  readonly fittingRow: string;
  readonly crimpRow: string;
}

/** A hose with two fittings, as expressions of one row. */
export class CoupledExpressions {
  readonly parts: CopiedParts;
  readonly hose: NativeArgument;
  readonly ends: readonly [NativeEnd, NativeEnd];
  readonly cut: string;
  private readonly hoseRow: string;
  private readonly names: readonly NativeArgument[];
  private readonly overall: NativeArgument;

  /** @param call catalogue, hose, fitting A, fitting B, overall length */
  constructor(call: NativeArguments, context: NativeContext) {
    this.parts = partsOf(context);
    this.requireFerrules();
    this.hose = given(call, 1);
    const fittings = [given(call, 2), given(call, 3)] as const;
    this.names = [this.hose, ...fittings];
    for (const fitting of fittings) requireShort(this.hose, fitting);
    this.overall = given(call, 4);
    if (this.parts.catalogue.units.length.symbol !== 'in') refuseMarks(call);
    const hose = trimmed(this.hose);
    this.hoseRow = this.parts.hoseRow(hose);
    this.ends = fittings.map(fitting => ({
      fittingRow: this.parts.fittingRow(trimmed(fitting)),
      crimpRow: this.parts.crimpRow(hose, trimmed(fitting)),
    })) as unknown as [NativeEnd, NativeEnd];
    const [a, b] = this.ends.map(({ fittingRow }) => this.parts.needed('fittings', 'cutOff', fittingRow));
    this.cut = rounded(`${this.overall.text}-${a}-${b}`);
  }

  /** A ferrule that was left out of the catalogue makes an error of every assembly with it. */
  private requireFerrules(): void {
    const { crimps, index } = this.parts.catalogue;
    const isLeftOut = crimps.some(({ ferrule }) => ferrule && index.fittings.get(ferrule.trim().toLowerCase())?.problem);
    if (isLeftOut) throw new NotNative('a ferrule was left out of the catalogue');
  }

  get isBlank(): string {
    return blankKey(this.hose);
  }

  ofHose(field: string): string | undefined {
    return this.parts.field('hoses', field, this.hoseRow);
  }

  ofFittings(field: string): readonly (string | undefined)[] {
    return this.ends.map(({ fittingRow }) => this.parts.field('fittings', field, fittingRow));
  }

  /** Conditions under which nothing is known of it: a part that is not in the catalogue, a length that is none, no hose left. */
  refused(): string[] {
    const [hose, a, b] = this.names as [NativeArgument, NativeArgument, NativeArgument];
    const isMm = this.parts.catalogue.units.length.symbol === 'mm';
    return [
      ...[a, b].map(({ text }) => `${text}=""`),
      ...this.parts.refusedNames([hose, a, b].map(trimmed)),
      ...refusedNumber(this.overall, { sign: 'positive', mayBeDate: !isMm }),
      `ISNA(${this.hoseRow})`,
      ...this.ends.map(({ fittingRow }) => `ISNA(${fittingRow})`),
    ];
  }

  /** Families that differ, sizes that differ, no crimp data: a condition each. */
  faults(): { readonly families: string; readonly sizes: string; readonly crimps: string } {
    const family = this.parts.needed('hoses', 'family', this.hoseRow);
    const bore = this.parts.needed('hoses', 'bore', this.hoseRow);
    const of = (field: string) => this.ends.map(({ fittingRow }) => this.parts.needed('fittings', field, fittingRow));
    return {
      families: anyOf(of('family').map(other => `${family}<>${other}`)),
      sizes: anyOf(of('bore').map(other => `${rounded(`ABS(${bore}-${other})*50-${bore}`)}>0`)),
      crimps: anyOf(this.ends.map(({ crimpRow }) => `ISNA(${crimpRow})`)),
    };
  }

  /** How deep the hose goes into an end: the crimp row's depth, else the fitting's; blank where neither says. */
  depths(): readonly string[] {
    return this.ends.map(({ fittingRow, crimpRow }) => {
      const ofFitting = this.parts.field('fittings', 'insertionDepth', fittingRow) ?? '""';
      const ofCrimp = this.parts.field('crimps', 'insertionDepth', crimpRow);
      return ofCrimp ? `IF(ISNA(${crimpRow}),${ofFitting},IF(${ofCrimp}="",${ofFitting},${ofCrimp}))` : ofFitting;
    });
  }

  /** Condition under which less free hose is left than the shop wants. */
  tooShort(cut: string): string {
    const [length, diameters] = [this.parts.rate('shortest free hose'), this.parts.rate('shortest free hose in diameters')];
    const outside = this.ofHose('outsideDiameter');
    const stated = [...(length ? [length] : []), ...(diameters && outside ? [`${diameters}*N(${outside})`] : [])];
    const inserted = this.depths()
      .map(depth => (depth === '""' ? '0' : `N(${depth})`))
      .join('+');
    const shortest = stated.length > 0 ? `MAX(${stated.join(',')})+` : '';
    return `${rounded(`${cut}-(${shortest}${inserted})`)}<0`;
  }

  /** What keeps the free hose from being checked: conditions. */
  unchecked(): { readonly outside: string | undefined; readonly depth: string | undefined } {
    const [length, diameters] = [this.parts.rate('shortest free hose'), this.parts.rate('shortest free hose in diameters')];
    const outside = this.ofHose('outsideDiameter');
    const isOutsideBlank = outside ? `${outside}=""` : 'TRUE()';
    const noDepth = anyOf(this.depths().map(depth => `${depth}=""`));
    // The depths count only where the rates name a shortest free hose that can be worked out.
    const depth = length ? noDepth : diameters && outside ? `AND(${outside}<>"",${noDepth})` : undefined;
    return { outside: diameters ? `AND(${diameters}<>0,${isOutsideBlank})` : undefined, depth };
  }

  /** A field of the ferrule that an end's crimp row names: 0 where it names none that is a part, an error where the field is blank. */
  ofFerrule({ crimpRow }: NativeEnd, field: string): string | undefined {
    const ferrule = this.parts.field('crimps', 'ferrule', crimpRow);
    if (!ferrule) return undefined;
    const row = this.parts.fittingRow(ferrule);
    const found = this.parts.field('fittings', field, row);
    const value = found ? `IF(${found}="",NA(),${found})` : 'NA()';
    return `IF(ISNA(${crimpRow}),0,IF(${ferrule}="",0,IF(ISNA(${row}),0,${value})))`;
  }

  /** Lengths of the catalogue in one unit of its masses per length or prices per length. */
  ratio(of: 'massPerLength' | 'perLength'): string | undefined {
    const { units } = this.parts.catalogue;
    const per = units[of];
    return per && lengthRatio(units.length, per).toString();
  }
}
