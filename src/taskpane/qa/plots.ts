export { controlPlot } from './controlPlot';
export { stripPlot } from './stripPlot';
