import { useCallback, useEffect, useMemo, useRef, useState } from 'react';
import { FRESH_FIELDS, type RecordFields } from '../../sheets/inspection/inspectionRecord';
import {
  fieldsOfWorkbook,
  OF_WORKBOOK,
  recallRecordFields,
  rememberRecordFields,
  type WorkbookRecordFields,
} from '../../sheets/inspection/recordMemory';
import { hostOf } from '../../workbook/shownWorkbook';
import type { Workbook } from '../../workbook/workbook';
import { useStored } from '../controls/useStored';

/** The fields of records as they are typed. */
export type TypedRecordFields = RecordFields & { readonly pressureUnit: string };

const FRESH: TypedRecordFields = { ...FRESH_FIELDS, pressureUnit: 'bar' };
const SETTLED_MS = 250;
const isOfWorkbook = (name: string) => (OF_WORKBOOK as readonly string[]).includes(name);
const OF_COMPUTER = Object.fromEntries(Object.entries(FRESH).filter(([name]) => !isOfWorkbook(name)));

interface Own {
  /** Whose fields they are. */
  readonly host: Workbook;
  readonly fields: WorkbookRecordFields;
  /** Typed, and not remembered yet. */
  readonly isTyped: boolean;
}

/** Fields of the workbook's own work, remembered with it. */
function useOwn(workbook: Workbook): readonly [WorkbookRecordFields, (part: Partial<WorkbookRecordFields>) => void] {
  const host = hostOf(workbook);
  const [own, setOwn] = useState<Own>({ host, fields: fieldsOfWorkbook({}), isTyped: false });
  const ofHost = useMemo(() => (own.host === host ? own : { host, fields: fieldsOfWorkbook({}), isTyped: false }), [own, host]);
  // What is typed while the workbook is asked counts before what it remembers.
  const typed = useRef<Partial<WorkbookRecordFields>>({});
  useEffect(() => {
    let isOver = false;
    typed.current = {};
    recallRecordFields(host).then(
      fields => {
        const isTyped = Object.keys(typed.current).length > 0;
        const isSaid = OF_WORKBOOK.some(name => fields[name] !== '');
        if (!isOver && isSaid) setOwn({ host, fields: { ...fields, ...typed.current }, isTyped });
      },
      () => undefined,
    );
    return () => {
      isOver = true;
    };
  }, [host]);
  useEffect(() => {
    if (!ofHost.isTyped) return;
    // A host that cannot remember forgets; nothing else changes.
    const timer = setTimeout(() => void rememberRecordFields(host, ofHost.fields).catch(() => undefined), SETTLED_MS);
    return () => clearTimeout(timer);
  }, [host, ofHost]);
  const change = useCallback(
    (part: Partial<WorkbookRecordFields>) => {
      typed.current = { ...typed.current, ...part };
      setOwn(before => {
        const fields = before.host === host ? before.fields : fieldsOfWorkbook({});
        return { host, fields: { ...fields, ...part }, isTyped: true };
      });
    },
    [host],
  );
  return [ofHost.fields, change];
}

/** What is typed for records: the workshop's own ways are kept on this computer, what is of one workbook's work in that workbook. */
export function useRecordFields(workbook: Workbook): readonly [TypedRecordFields, (part: Partial<TypedRecordFields>) => void] {
  const [kept, keep] = useStored('records', OF_COMPUTER);
  const [own, changeOwn] = useOwn(workbook);
  const change = (part: Partial<TypedRecordFields>) => {
    const parts = Object.entries(part);
    const ofWorkbook = parts.filter(([name]) => isOfWorkbook(name));
    if (ofWorkbook.length > 0) changeOwn(Object.fromEntries(ofWorkbook));
    if (ofWorkbook.length < parts.length) keep(Object.fromEntries(parts.filter(([name]) => !isOfWorkbook(name))));
  };
  const fields = useMemo(() => ({ ...FRESH, ...kept, ...own }), [kept, own]);
  return [fields, change];
}
