import { useEffect, useState } from 'react';
import { OFFICE_ASKED_AGAIN_AFTER_MS, type OfficeFile, type OfficeFileAsker } from '../../workbook/officeFile';

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
    const timer = setInterval(() => void ask(), OFFICE_ASKED_AGAIN_AFTER_MS);
    return () => {
      isGone = true;
      clearInterval(timer);
    };
  }, [officeFile]);
  return file;
}
