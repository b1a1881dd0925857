/** The little that our worksheet functions ask of a host; imported before them, because they register themselves on import. */
class CellError extends Error {
  constructor(
    readonly code: string,
    message?: string,
  ) {
    super(message ?? '');
  }
}

const host = globalThis as { CustomFunctions?: unknown };
host.CustomFunctions ??= { Error: CellError, associate: () => undefined };
