import { rememberedKey } from '../../workbook/rememberedKey';

/**
 * A text kept in the workbook's settings; undefined where there is none under that key.
 * Source: Excel.SettingCollection (ExcelApi 1.4): kept in the file, for each add-in its own.
 */
export async function recallSetting(context: Excel.RequestContext, key: string): Promise<string | undefined> {
  const setting = context.workbook.settings.getItemOrNullObject(rememberedKey(key));
  setting.load('value');
  await context.sync();
  return setting.isNullObject || typeof setting.value !== 'string' ? undefined : setting.value;
}

/** Keeps a text in the workbook's settings in place of the one before; undefined takes it away. */
export async function rememberSetting(context: Excel.RequestContext, key: string, text: string | undefined): Promise<void> {
  const { settings } = context.workbook;
  if (text !== undefined) {
    settings.add(rememberedKey(key), text);
    await context.sync();
    return;
  }
  const setting = settings.getItemOrNullObject(rememberedKey(key));
  setting.load('key');
  await context.sync();
  if (setting.isNullObject) return;
  setting.delete();
  await context.sync();
}
