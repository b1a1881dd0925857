/** One parameter of a worksheet function, as functions.json describes it. */
export interface ParameterMetadata {
  readonly name: string;
  readonly description?: string;
  readonly type?: string;
  readonly dimensionality?: string;
  readonly optional?: boolean;
}

/** One worksheet function, as functions.json describes it. */
export interface FunctionMetadata {
  readonly id: string;
  readonly name: string;
  readonly description?: string;
  readonly helpUrl?: string;
  readonly parameters: readonly ParameterMetadata[];
  readonly options?: { readonly cancelable?: boolean };
}

/** The content of functions.json. */
export interface FunctionsFile {
  readonly functions: readonly FunctionMetadata[];
  /** True where functions want to see error values; without it a host answers with the error and does not call. */
  readonly allowErrorForDataTypeAny?: boolean;
}
