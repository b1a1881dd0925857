import { estimator } from './estimator';
import { quality } from './quality';
import { shopOffice } from './shopOffice';
import type { Tour } from './tour';

/** The tours, one a person. */
export const tours: readonly Tour[] = [estimator, shopOffice, quality];
