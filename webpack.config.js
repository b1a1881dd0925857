import { cutPlanWorker } from './scripts/webpack/cutPlanWorker.mjs';
import { functions } from './scripts/webpack/functions.mjs';
import { preview } from './scripts/webpack/preview.mjs';
import { buildSetting } from './scripts/webpack/setting.mjs';
import { taskpane } from './scripts/webpack/taskpane.mjs';

/** One bundle a page, and the worksheet functions by themselves. */
export default (_env, argv) => {
  const setting = buildSetting(argv);
  return [functions(setting), cutPlanWorker(setting), taskpane(setting), preview(setting)];
};
