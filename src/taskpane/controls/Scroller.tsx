import { makeStyles } from '@fluentui/react-components';
import type { ReactNode } from 'react';

const useStyles = makeStyles({ scroller: { overflowX: 'auto', minWidth: 0 } });

/** A table that scrolls sideways by itself where the pane is too narrow for it, so that the pane does not. */
export function Scroller({ children }: { readonly children: ReactNode }) {
  return (
    <div className={useStyles().scroller} data-scrolls>
      {children}
    </div>
  );
}
