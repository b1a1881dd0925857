import { Button, Caption1, Field, ProgressBar } from '@fluentui/react-components';
import type { LengthUnit } from '../../core/units/lengthUnit';
import { Decimal } from '../../core/units/decimal';
import { longText } from '../../sheets/cutlist/planText';
import type { PlanProgress } from '../../sheets/cutlist/planHoses';

interface Props {
  readonly progress: PlanProgress | undefined;
  readonly isEnding: boolean;
  readonly unit: LengthUnit;
  readonly onCancel: () => void;
}

/** How far planning is: which hose, the best plan so far and its bound; ending it keeps the best so far. */
export function PlanProgressView({ progress, isEnding, unit, onCancel }: Props) {
  const text = (length: number | undefined) => (length === undefined ? 'none yet' : longText(new Decimal(length), unit));
  return (
    <>
      <Field
        validationState="none"
        validationMessage={progress ? `${progress.hose} (${progress.number} of ${progress.of})` : 'Reading the sheets'}
      >
        <ProgressBar value={progress && (progress.number - 1) / progress.of} aria-label="Planning the cuts" />
      </Field>
      {progress && (
        <Caption1 block role="status">
          Best so far takes {text(progress.best)}; no plan can take less than {text(progress.bound)}.
        </Caption1>
      )}
      <Button onClick={onCancel} disabled={isEnding}>
        {isEnding ? 'Ending …' : 'Stop and keep the best so far'}
      </Button>
    </>
  );
}
