import { machineCheck, type CheckForm } from '../../../src/sheets/machines/machineCheck';

const form: CheckForm = {
  unit: 'in',
  machine: 'Gate',
  setUp: 'reference ring',
  expected: '1.000',
  readings: ['1.014', '1.014', '1.014', '1.014'],
  perTurn: '0.028',
  leaveAlone: '',
};

describe('a machine check', () => {
  // Check value: 0.028 in a turn of the calibration screw, common practice of the trade; 0.014 large is half a turn.
  it('gives deviation and turns, tighter for a machine that crimps large', () => {
    const result = machineCheck(form);
    expect([result.mean, result.deviation, result.turns].map(Number)).toEqual([1.014, 0.014, 0.5]);
    expect(result.sentence).toBe(
      'The machine crimps 0.014 in large: turn the calibration screw 0.5 turns tighter, then check again.',
    );
  });

  it('turns the other way for one that crimps small, and leaves alone what the user leaves alone', () => {
    const small = { ...form, readings: ['0.986', '0.986'] };
    expect(machineCheck(small).sentence).toMatch(/0\.014 in small: turn the calibration screw 0\.5 turns looser/);
    expect(machineCheck({ ...small, leaveAlone: '0.014' }).sentence).toMatch(/small enough to leave alone/);
    expect(machineCheck({ ...form, perTurn: '' }).sentence).toMatch(/Enter the change per turn/);
  });

  it.each([
    [{ expected: '' }, /expected diameter is blank/],
    [{ readings: ['1.01', '', '', ''] }, /readings are missing/],
    [{ readings: ['25.4', '25.4'] }, /looks like millimetres/],
    [{ readings: ['10.14', '1.014'] }, /of a crimp of 1 in \(is the decimal point missing\? 1\.014\): measure again$/],
    // 2.00 is no 1.000 either: a check has no tolerance that would make it near.
    [{ readings: ['200', '1.014'] }, /of a crimp of 1 in: measure again$/],
    [{ perTurn: 'a bit' }, /change per turn is "a bit"/],
  ])('names the field that cannot be used: %j', (part, sentence) => {
    expect(() => machineCheck({ ...form, ...part })).toThrow(sentence);
  });
});
