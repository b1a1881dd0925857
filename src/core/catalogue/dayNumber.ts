export { dayNumber, isoDate } from '../units/sheetDate';
