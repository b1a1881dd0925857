import { number } from './readers';

/** Reads a crimp diameter. */
export const readDiameter = number({ sign: 'positive', mayBeDate: true, zeroIsBlank: true, hint: 'enter a diameter' });

/** Reads a tolerance that holds either way. */
export const readTolerance = number({
  sign: 'positive',
  mayBeDate: true,
  zeroIsBlank: true,
  hint: 'enter the tolerance as one number, without ±',
});
