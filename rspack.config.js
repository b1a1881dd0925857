import { cutPlanWorker } from './scripts/rspack/cutPlanWorker.mjs';
import { functions } from './scripts/rspack/functions.mjs';
import { preview } from './scripts/rspack/preview.mjs';
import { buildSetting } from './scripts/rspack/setting.mjs';
import { taskpane } from './scripts/rspack/taskpane.mjs';

/** One bundle a page, and the worksheet functions by themselves. */
export default (_env, argv) => {
  const setting = buildSetting(argv);
  return [functions(setting), cutPlanWorker(setting), taskpane(setting), preview(setting)];
};
