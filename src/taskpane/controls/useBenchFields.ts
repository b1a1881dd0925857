import { useEffect } from 'react';
import { lengthUnitOf } from '../../core/units/lengthUnit';
import { freshSettings, type CutSettingsText } from '../../sheets/cutlist/cutSettings';
import { rackSheets, readRack } from '../../sheets/rack/rack';
import type { Workbook } from '../../workbook/workbook';
import { hasStored, useStored } from './useStored';

/** Whether the workbook's rack gives its lengths in feet, yards or inches. */
async function isRackInFeet(workbook: Workbook): Promise<boolean> {
  const [sheet] = await rackSheets(workbook);
  const rack = sheet === undefined ? undefined : await readRack(workbook, sheet);
  const units = (rack?.tables ?? []).map(({ reader }) => reader.unitOf('length'));
  return units.length > 0 && units.every(unit => unit && lengthUnitOf(unit) === 'in');
}

/** What the bench cuts with. Until somebody has said anything, it measures as the rack does: in inches where that is in feet. */
export function useBenchFields(workbook: Workbook): [CutSettingsText, (change: Partial<CutSettingsText>) => void] {
  const [fields, setFields] = useStored('cuts', freshSettings('mm'));
  useEffect(() => {
    let isGone = false;
    const look = async () => {
      const isInches = !hasStored('cuts') && (await isRackInFeet(workbook).catch(() => false));
      if (isInches && !isGone && !hasStored('cuts')) setFields(freshSettings('in'));
    };
    void look();
    return () => {
      isGone = true;
    };
  }, [workbook, setFields]);
  return [fields, setFields];
}
