import { canDownload, downloadFile } from '../../host/copyFile/downloads';
import { officeFileAsker } from '../../host/catalogueFile/officeFile';
import { canOpenSample, openSample, sampleAddress } from '../../host/excel/sampleFile';
import { canPrint, printDocument } from '../../host/print/printDocument';
import type { HostServices } from '../controls/viewProps';

const MOST_AT_ONCE = 4;

/** As many as there are cores, where the solver runs in workers. */
const plansAtOnce = typeof Worker === 'function' ? Math.min(MOST_AT_ONCE, navigator.hardwareConcurrency || 1) : 1;

/** What the host does for the views; its heavy parts are loaded when they are first used. */
export const hostServices: HostServices = {
  solve: async (problem, watch) => {
    const { planCuts } = await import('../../host/cutplan/planCuts');
    return planCuts(problem, watch);
  },
  plansAtOnce,
  readPartsFile: async (file, watch) => {
    const { readPartsFile } = await import('../../host/catalogueFile/readPartsFile');
    return readPartsFile(file, watch);
  },
  officeFile: officeFileAsker((address, wishes) => fetch(address, wishes)),
  canPrint,
  print: printDocument,
  canDownload,
  sample: { address: sampleAddress, canOpen: canOpenSample, open: openSample },
  downloadCopy: async (copy, fileName) => {
    if (!canDownload()) return false;
    const { copyFile } = await import('../../host/copyFile/copyFile');
    downloadFile(await copyFile(copy), fileName);
    return true;
  },
};
