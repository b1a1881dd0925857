export const PACKAGED_BROWSER: string;
export function unpackBrowser(): Promise<void>;
