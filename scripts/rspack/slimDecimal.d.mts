export const UNUSED_METHODS: Readonly<Record<string, string>>;
export const UNUSED_STATICS: readonly string[];
export const UNUSED_OF_CLASS: readonly string[];
export default function slimDecimal(source: string): string;
export const UNUSED_NAMES: readonly string[];
