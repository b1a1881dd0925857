import { Button, type ButtonProps } from '@fluentui/react-components';

type Props = Omit<Extract<ButtonProps, { as?: 'button' }>, 'onClick'> & { readonly onClick: () => void };

/** A button that writes to the workbook: a double click writes once, also where the first writing has ended by then. */
export function WriteButton({ onClick, ...rest }: Props) {
  return <Button {...rest} onClick={({ detail }) => detail < 2 && onClick()} />;
}
