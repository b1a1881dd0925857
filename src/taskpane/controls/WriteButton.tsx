import { Button, type ButtonProps } from '@fluentui/react-components';

type Props = Omit<Extract<ButtonProps, { as?: 'button' }>, 'onClick' | 'disabledFocusable'> & { readonly onClick: () => void };

/**
 * A button that writes to the workbook: a double click writes once, also where the first writing has ended by then. While it cannot be
 * pressed it can still be reached, so that a keyboard that has just pressed it keeps its place.
 */
export function WriteButton({ onClick, disabled = false, ...rest }: Props) {
  return <Button {...rest} disabledFocusable={disabled} onClick={({ detail }) => detail < 2 && onClick()} />;
}
