import { useEffect, useState } from 'react';
import type { OfficeFile, OfficeFileAsker } from '../../workbook/officeFile';

const AGAIN_AFTER_MS = 3_600_000;

/** The office's catalogue as the host of the add-in has it: asked for at once and then every hour; undefined until it has answered. */
export function useOfficeFile(officeFile: OfficeFileAsker): OfficeFile | undefined {
  const [file, setFile] = useState<OfficeFile>();
  useEffect(() => {
    let isGone = false;
    const ask = async () => {
      const answer = await officeFile();
      if (!isGone) setFile(answer);
    };
    void ask();
    const timer = setInterval(() => void ask(), AGAIN_AFTER_MS);
    return () => {
      isGone = true;
      clearInterval(timer);
    };
  }, [officeFile]);
  return file;
}
