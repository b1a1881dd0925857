import type { HostServices } from '../controls/viewProps';

/** What the host does for the views; its heavy parts are loaded when they are first used. */
export const hostServices: HostServices = {
  solve: async (problem, watch) => {
    const { planCuts } = await import('../../host/cutplan/planCuts');
    return planCuts(problem, watch);
  },
  readPartsFile: async (file, watch) => {
    const { readPartsFile } = await import('../../host/catalogueFile/readPartsFile');
    return readPartsFile(file, watch);
  },
};
