import { bundle } from './bundle.mjs';

/** The cut plan's worker: one classic script beside the others, started by the page where the host has workers. */
export const cutPlanWorker = setting => ({
  ...bundle(setting, 'cutplan-worker'),
  target: ['webworker', 'es2020'],
  entry: { 'cutplan-worker': './src/host/cutplan/cutPlanWorker.ts' },
});
