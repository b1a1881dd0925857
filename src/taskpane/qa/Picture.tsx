import { Caption1, makeStyles, tokens } from '@fluentui/react-components';
import { useEffect, useRef, useState } from 'react';

/** The part of the pane that draws; it is loaded when the first picture is shown. */
export type Plots = typeof import('./plots');

const NARROWEST = 240;
const WIDEST = 640;

const useStyles = makeStyles({
  frame: {
    margin: 0,
    minWidth: 0,
    overflow: 'hidden',
    '--picture-ink': tokens.colorNeutralForeground1,
    '--picture-back': tokens.colorNeutralBackground1,
    '--picture-good': tokens.colorBrandForeground1,
    '--picture-bad': tokens.colorPaletteRedForeground1,
    '@media (forced-colors: active)': {
      '--picture-ink': 'CanvasText',
      '--picture-back': 'Canvas',
      '--picture-good': 'CanvasText',
      '--picture-bad': 'CanvasText',
    },
    '& svg': { display: 'block', maxWidth: '100%', forcedColorAdjust: 'none' },
  },
});

interface Props {
  readonly draw: (plots: Plots, width: number) => Element;
  /** What the picture shows, in a sentence; the amounts stand in text beside it. */
  readonly label: string;
}

/** A picture as wide as the pane. Where it cannot be drawn it says so: the text beside it says the same. */
export function Picture({ draw, label }: Props) {
  const styles = useStyles();
  const frame = useRef<HTMLDivElement>(null);
  const [width, setWidth] = useState(0);
  const [failed, setFailed] = useState<Props['draw']>();

  useEffect(() => {
    const element = frame.current;
    if (!element) return undefined;
    const measure = () => setWidth(Math.round(Math.min(WIDEST, Math.max(NARROWEST, element.clientWidth || NARROWEST))));
    measure();
    if (typeof ResizeObserver === 'undefined') return undefined;
    // A hidden pane has no width: the picture stays as it is.
    const observer = new ResizeObserver(() => element.clientWidth > 0 && measure());
    observer.observe(element);
    return () => observer.disconnect();
  }, []);

  useEffect(() => {
    let isGone = false;
    if (width === 0) return undefined;
    import(/* webpackChunkName: "plots" */ './plots')
      .then(plots => {
        if (isGone) return;
        const drawn = draw(plots, width);
        drawn.setAttribute('aria-hidden', 'true');
        frame.current?.replaceChildren(drawn);
      })
      .catch(() => {
        if (!isGone) setFailed(() => draw);
      });
    return () => {
      isGone = true;
    };
  }, [draw, width]);

  return (
    <>
      <div ref={frame} className={styles.frame} role="img" aria-label={label} />
      {failed === draw && <Caption1>The picture cannot be drawn here; the text says the same.</Caption1>}
    </>
  );
}
