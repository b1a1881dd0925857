import { typedNumber, type TypedNumber } from '../../cells/typedNumber';

/** Fields that several forms have, or that are no part of what a sheet says: each typed text as a number, or what is wrong with it. */

/**
 * A proof factor; below 1 it proves nothing.
 * @param blank what to say where none was typed; without it a blank is no mistake
 */
export const typedProofFactor = (text: string, blank?: string): TypedNumber =>
  typedNumber(text, 'proof factor', { least: 1, like: '2', marks: 'noLength', blank });

/** A dial; it may stay blank. An instrument's decimal comma is a point. */
export const typedDial = (text: string): TypedNumber =>
  typedNumber(text, 'dial', { comma: 'decimal', marks: 'noLength', like: '425' });

/** A share of a tolerance, from 0 to 1. */
export const typedShare = (text: string): TypedNumber =>
  typedNumber(text, 'share', { least: 0, most: 1, like: '0.5', marks: 'noLength', blank: 'enter a number from 0 to 1' });

/** A number of things, 0 or more. */
export const typedCount = (text: string, label: string, hint: string): TypedNumber =>
  typedNumber(text, label, { sign: 'notNegative', whole: hint, hint, blank: hint, marks: 'noLength' });

/** A size that must be given, more than 0. */
export const typedSize = (text: string, label: string): TypedNumber =>
  typedNumber(text, label, { sign: 'positive', blank: 'enter a number above 0' });
