import { Field, Input, Select } from '@fluentui/react-components';
import type { ReactNode } from 'react';
import type { DutyField, DutyText } from '../../sheets/duty/dutyFields';

/** What the fields of the form show and change. */
export interface DutyControls {
  readonly fields: DutyText;
  readonly mistakes: Readonly<Record<string, string>>;
  /** True once hoses were asked for: blank fields are mistakes from then on. */
  readonly isAsked: boolean;
  readonly onFields: (change: Partial<DutyText>) => void;
}

/** The two kinds of field: typed text, and a choice; each says what is wrong with it. */
export function dutyControls({ fields, mistakes, isAsked, className, onFields }: DutyControls & { readonly className: string }) {
  const frame = (field: DutyField, label: string, hint: string | undefined, control: ReactNode) => {
    const mistake = isAsked || fields[field].trim() !== '' ? mistakes[field] : undefined;
    return (
      <Field label={label} hint={hint} validationState={mistake ? 'error' : 'none'} validationMessage={mistake}>
        {control as never}
      </Field>
    );
  };
  const text = (field: DutyField, label: string, hint?: string, list?: string) =>
    frame(
      field,
      label,
      hint,
      <Input
        className={className}
        value={fields[field]}
        onChange={(_, { value }) => onFields({ [field]: value })}
        input={list ? { list } : undefined}
      />,
    );
  const pick = (field: DutyField, label: string, options: readonly (readonly [string, string])[], hint?: string) =>
    frame(
      field,
      label,
      hint,
      <Select className={className} value={fields[field]} onChange={(_, { value }) => onFields({ [field]: value })}>
        {options.map(([value, words]) => (
          <option key={value} value={value}>
            {words}
          </option>
        ))}
      </Select>,
    );
  return { text, pick };
}
