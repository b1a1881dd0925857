import { Caption1, makeStyles, tokens } from '@fluentui/react-components';

const useStyles = makeStyles({
  caution: { borderLeft: `3px solid ${tokens.colorPaletteDarkOrangeBorderActive}`, paddingLeft: tokens.spacingHorizontalM },
});

/** What to mind before anybody crimps by the columns. */
export function CrimpCautions({ limitsLeftOut }: { readonly limitsLeftOut: readonly string[] }) {
  const styles = useStyles();
  return (
    <div className={styles.caution} role="note">
      <Caption1 block>
        Crimp values: the makers’ current data come first, and hose and couplings of different makers are mixed only with their
        written approval. Try a setting on one trial piece and measure. A rejected crimp stays rejected. Local codes and a
        qualified person decide.
      </Caption1>
      {limitsLeftOut.length > 0 && (
        <Caption1 block>
          Next dial is written without these limits of the machine’s dial: {limitsLeftOut.join(', ')}. Choose the machine, or add
          them to the table Machines.
        </Caption1>
      )}
    </div>
  );
}
