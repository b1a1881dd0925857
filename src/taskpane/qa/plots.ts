export { controlPlot } from './controlPlot';
export { diePlot, stripPlot } from './stripPlot';
export { timePlot } from './timePlot';
