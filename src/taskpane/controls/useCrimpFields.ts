import { NO_CRIMP_FIELDS, type CrimpFields } from '../../sheets/crimps/crimpFields';
import { useStored } from './useStored';

/** What counts where sheet and catalogue say nothing: the same for analysis, entry and records. */
export const useCrimpFields = (): [CrimpFields, (change: Partial<CrimpFields>) => void] => useStored('crimps', NO_CRIMP_FIELDS);
