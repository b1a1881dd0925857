/** One argument of a worksheet function, as functions.json describes it. */
export interface FunctionParameter {
  readonly name: string;
  readonly description?: string | undefined;
  readonly optional?: boolean | undefined;
}

/** One worksheet function, as functions.json describes it. */
export interface FunctionMetadata {
  readonly id: string;
  readonly name: string;
  readonly description?: string | undefined;
  readonly helpUrl?: string | undefined;
  readonly parameters: readonly FunctionParameter[];
}
