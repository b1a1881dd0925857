/** How a thread's flanks stand: 60° of ISO 68-1 and ASME B1.1, 55° of ISO 228-1 and ISO 7-1. */
export type ThreadForm = 60 | 55;

/** One family of threads: its standard, and what its numbers are given in. */
export interface ThreadFamily {
  readonly standard: string;
  readonly form: ThreadForm;
  /** Unit of the diameters; pitches are in mm where it is mm, else in threads per inch. */
  readonly unit: 'mm' | 'in';
  readonly pitchIn: 'mm' | 'perInch';
  /** Name, outside diameter, pitch, and the end forms of couplings that use it, in the catalogue's words. */
  readonly threads: readonly (readonly [name: string, diameter: string, pitch: string, usedWith: string])[];
}

/**
 * Threads of hydraulic couplings: outside (major) diameter of the male thread; of tapered ones that of the pipe, near the large end.
 * Source: all from memory, not seen: ISO 228-1 and ISO 7-1 (diameters and threads per inch), ISO 261 (metric fine series), ASME B1.1
 * (UN, UNF), ASME B1.20.1 (NPT); end forms by size: ISO 8434-1, -2, -3, -6 and ISO 12151. Compare with your copies and edit here.
 * There is no G 5/16.
 */
export const threadFamilies = [
  {
    standard: 'ISO 228-1',
    form: 55,
    unit: 'mm',
    pitchIn: 'perInch',
    threads: [
      ['G 1/8', '9.728', '28', '60° cone'],
      ['G 1/4', '13.157', '19', '60° cone DN 6'],
      ['G 3/8', '16.662', '19', '60° cone DN 10'],
      ['G 1/2', '20.955', '14', '60° cone DN 12'],
      ['G 5/8', '22.911', '14', '60° cone DN 16'],
      ['G 3/4', '26.441', '14', '60° cone DN 19'],
      ['G 1', '33.249', '11', '60° cone DN 25'],
      ['G 1 1/4', '41.910', '11', '60° cone DN 31'],
      ['G 1 1/2', '47.803', '11', '60° cone DN 38'],
      ['G 2', '59.614', '11', '60° cone DN 51'],
    ],
  },
  {
    standard: 'ISO 7-1',
    form: 55,
    unit: 'mm',
    pitchIn: 'perInch',
    threads: [
      ['R 1/8', '9.728', '28', 'taper thread'],
      ['R 1/4', '13.157', '19', 'taper thread'],
      ['R 3/8', '16.662', '19', 'taper thread'],
      ['R 1/2', '20.955', '14', 'taper thread'],
      ['R 3/4', '26.441', '14', 'taper thread'],
      ['R 1', '33.249', '11', 'taper thread'],
      ['R 1 1/4', '41.910', '11', 'taper thread'],
      ['R 1 1/2', '47.803', '11', 'taper thread'],
      ['R 2', '59.614', '11', 'taper thread'],
    ],
  },
  {
    standard: 'ISO 261',
    form: 60,
    unit: 'mm',
    pitchIn: 'mm',
    threads: [
      ['M12x1.5', '12', '1.5', '24° cone L, light DN 5'],
      ['M14x1.5', '14', '1.5', '24° cone L, light DN 6'],
      ['M16x1.5', '16', '1.5', '24° cone L, light DN 8; 24° cone S, heavy DN 6'],
      ['M18x1.5', '18', '1.5', '24° cone L, light DN 10; 24° cone S, heavy DN 8'],
      ['M20x1.5', '20', '1.5', '24° cone S, heavy DN 10'],
      ['M22x1.5', '22', '1.5', '24° cone L, light DN 12'],
      ['M24x1.5', '24', '1.5', '24° cone S, heavy DN 12'],
      ['M26x1.5', '26', '1.5', '24° cone L, light DN 16'],
      ['M27x2', '27', '2', ''],
      ['M30x2', '30', '2', '24° cone L, light DN 19; 24° cone S, heavy DN 16'],
      ['M33x2', '33', '2', ''],
      ['M36x2', '36', '2', '24° cone L, light DN 25; 24° cone S, heavy DN 19'],
      ['M42x2', '42', '2', '24° cone S, heavy DN 25'],
      ['M45x2', '45', '2', '24° cone L, light DN 31'],
      ['M48x2', '48', '2', ''],
      ['M52x2', '52', '2', '24° cone L, light DN 38; 24° cone S, heavy DN 31'],
    ],
  },
  {
    standard: 'ASME B1.1',
    form: 60,
    unit: 'in',
    pitchIn: 'perInch',
    threads: [
      ['7/16-20', '0.4375', '20', '37° flare swivel DN 6'],
      ['1/2-20', '0.5', '20', '37° flare swivel DN 8'],
      ['9/16-18', '0.5625', '18', '37° flare swivel DN 10; O-ring face seal DN 6'],
      ['11/16-16', '0.6875', '16', 'O-ring face seal DN 10'],
      ['3/4-16', '0.75', '16', '37° flare swivel DN 12'],
      ['13/16-16', '0.8125', '16', 'O-ring face seal DN 12'],
      ['7/8-14', '0.875', '14', '37° flare swivel DN 16'],
      ['1-14', '1', '14', 'O-ring face seal DN 16'],
      ['1 1/16-12', '1.0625', '12', '37° flare swivel DN 19'],
      ['1 3/16-12', '1.1875', '12', '37° flare swivel DN 22; O-ring face seal DN 19'],
      ['1 5/16-12', '1.3125', '12', '37° flare swivel DN 25'],
      ['1 7/16-12', '1.4375', '12', 'O-ring face seal DN 25'],
      ['1 5/8-12', '1.625', '12', '37° flare swivel DN 31'],
      ['1 11/16-12', '1.6875', '12', 'O-ring face seal DN 31'],
      ['1 7/8-12', '1.875', '12', '37° flare swivel DN 38'],
      ['2-12', '2', '12', 'O-ring face seal DN 38'],
      ['2 1/2-12', '2.5', '12', '37° flare swivel DN 51'],
    ],
  },
  {
    standard: 'ASME B1.20.1',
    form: 60,
    unit: 'in',
    pitchIn: 'perInch',
    threads: [
      ['1/8-27 NPT', '0.405', '27', 'taper thread'],
      ['1/4-18 NPT', '0.540', '18', 'taper thread'],
      ['3/8-18 NPT', '0.675', '18', 'taper thread'],
      ['1/2-14 NPT', '0.840', '14', 'taper thread'],
      ['3/4-14 NPT', '1.050', '14', 'taper thread'],
      ['1-11.5 NPT', '1.315', '11.5', 'taper thread'],
      ['1 1/4-11.5 NPT', '1.660', '11.5', 'taper thread'],
      ['1 1/2-11.5 NPT', '1.900', '11.5', 'taper thread'],
      ['2-11.5 NPT', '2.375', '11.5', 'taper thread'],
    ],
  },
] as const satisfies readonly ThreadFamily[];
