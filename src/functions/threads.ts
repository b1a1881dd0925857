import { findThread as findThreadOf } from '../core/threads/findThread';
import { answer, table } from '../cells/answer';
import { choice, number } from '../cells/readers';
import { optionalSingle, single } from '../cells/singles';

/**
 * What a measured thread may be, likeliest first. Where diameters lie closer together than a caliper tells, count the threads.
 * @customfunction FINDTHREAD FINDTHREAD
 * @param {any[][]} diameter Diameter by caliper, one value: outside of a male thread, inside of a female one (in the unit named third).
 * @param {any[][]} pitch Pitch, one value: in mm, or in threads per inch where the unit is "in" (blank = not measured).
 * @param {any[][]} unit Unit of the diameter: "mm" or "in".
 * @param {any[][]} [side] "male" or "female" (blank = male).
 * @returns {any[][]} Table with heading: Thread, Standard, Diameter, Pitch, Off by (measured - diameter), Used with (end forms); all threads within 0.6 mm whose pitch, if given, agrees within 4 %, nearest first. #N/A where there is none.
 * Source: ISO 228-1, ISO 7-1, ISO 261, ASME B1.1 and B1.20.1, recalled from memory: compare with your own copy. Inside diameters by the form of the thread.
 * @example =HOSE.FINDTHREAD(30, 2, "mm") gives Thread, Standard, Diameter, Pitch, Off by, Used with, M30x2, ISO 261, 30, 2, 0
 */
export function findThread(diameter: any[][], pitch: any[][], unit: any[][], side?: any[][]): any[][] {
  return answer(() => {
    const lengthUnit = single('unit', unit, choice('mm', 'in'));
    const millimetres = lengthUnit === 'mm';
    const rules = { sign: 'positive', zeroIsBlank: true } as const;
    const readPitch = millimetres
      ? number({ ...rules, millimetres, hint: 'enter the pitch in mm', like: '1.5' })
      : number({ ...rules, marks: 'noLength', hint: 'enter threads per inch', like: '14' });
    const threads = findThreadOf({
      diameter: single('diameter', diameter, number({ ...rules, mayBeDate: true, millimetres, hint: 'enter the diameter' })),
      pitch: optionalSingle('pitch', pitch, readPitch),
      unit: lengthUnit,
      side: optionalSingle('side', side, choice('male', 'female')) ?? 'male',
    });
    return table([
      ['Thread', 'Standard', 'Diameter', 'Pitch', 'Off by', 'Used with'],
      ...threads.map(found => [found.thread, found.standard, found.diameter, found.pitch, found.offBy, found.usedWith]),
    ]);
  });
}
