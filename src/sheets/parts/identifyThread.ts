import type { Catalogue } from '../../core/catalogue/catalogue';
import { findThread, type PossibleThread } from '../../core/threads/findThread';
import { TradeError } from '../../core/tradeError';
import type { LengthUnit } from '../../core/units/lengthUnit';
import { measured, type Measured } from './measured';
import { pitchText, shownLength, threadAdvice } from './threadAdvice';
import { threadUsers, type ThreadUsers } from './threadUsers';

/** What somebody measured, as typed. */
export interface ThreadFields {
  readonly diameter: string;
  /** In mm, or threads per inch where the unit is inches; "" = not measured. */
  readonly pitch: string;
  readonly unit: LengthUnit;
  readonly side: 'male' | 'female';
}

/** A thread that it may be, ready to be shown. */
export interface ThreadCandidate extends ThreadUsers {
  readonly thread: string;
  readonly standard: string;
  readonly diameter: string;
  readonly pitch: string;
  /** Measured − diameter, with its sign. */
  readonly offBy: string;
  /** By the standards; "" where nothing is known. */
  readonly usedWith: string;
}

/** What a measured thread may be; likeliest first. */
export type IdentifiedThread =
  | { readonly kind: 'blank' }
  | { readonly kind: 'mistake'; readonly field: 'diameter' | 'pitch'; readonly sentence: string }
  | { readonly kind: 'none'; readonly sentence: string }
  | { readonly kind: 'found'; readonly candidates: readonly ThreadCandidate[]; readonly advice: readonly string[] };

const NO_USERS: ThreadUsers = { endForms: [], fittings: [] };

function candidate(found: PossibleThread, unit: LengthUnit, catalogue: Catalogue | undefined): ThreadCandidate {
  const { thread, standard, usedWith, diameter, offBy } = found;
  const sign = offBy.isPositive() && !offBy.isZero() ? '+' : '';
  return {
    thread,
    standard,
    usedWith,
    diameter: shownLength(diameter, unit),
    pitch: pitchText(found, unit),
    offBy: `${sign}${shownLength(offBy, unit)}`,
    ...(catalogue ? threadUsers(catalogue, found) : NO_USERS),
  };
}

const wrong = (field: 'diameter' | 'pitch', { sentence }: Extract<Measured, { kind: 'mistake' }>): IdentifiedThread => ({
  kind: 'mistake',
  field,
  sentence,
});

/** Says what a measured thread may be, which parts of the catalogue have it, and what the caliper cannot tell. */
export function identifyThread({ unit, side, ...typed }: ThreadFields, catalogue: Catalogue | undefined): IdentifiedThread {
  const diameter = measured(typed.diameter, unit);
  const pitch = measured(typed.pitch, unit === 'mm' ? 'mm' : 'perInch');
  if (diameter.kind === 'mistake') return wrong('diameter', diameter);
  if (pitch.kind === 'mistake') return wrong('pitch', pitch);
  if (diameter.kind === 'blank') return { kind: 'blank' };
  try {
    const found = findThread({ diameter: diameter.value, pitch: pitch.kind === 'blank' ? undefined : pitch.value, unit, side });
    const candidates = found.map(each => candidate(each, unit, catalogue));
    return { kind: 'found', candidates, advice: threadAdvice(found, unit) };
  } catch (error) {
    if (error instanceof TradeError && error.code === 'notFound') return { kind: 'none', sentence: `${error.message}.` };
    throw error;
  }
}
