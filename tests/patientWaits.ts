import type * as TestingLibrary from '@testing-library/dom';

/** Not in the library's types: whether it looks again later. */
interface Looking extends TestingLibrary.Config {
  readonly _disableExpensiveErrorDiagnostics: boolean;
}

// Only where there is a page: the library is larger than most of what is tested without one.
if (typeof document !== 'undefined') {
  // eslint-disable-next-line @typescript-eslint/no-require-imports
  const { configure, getConfig } = require('@testing-library/dom') as typeof TestingLibrary;
  const { getElementError } = getConfig();
  const looksAgain = () => (getConfig() as Looking)._disableExpensiveErrorDiagnostics;

  configure({
    // Component tests wait for what appears; a busy machine may need longer than the library's one second.
    asyncUtilTimeout: 30_000,
    // Every look in vain would print the page into an error that nobody sees: the library prints it anew when it gives up.
    getElementError: (message, container) =>
      looksAgain()
        ? Object.assign(new Error(message ?? ''), { name: 'TestingLibraryElementError' })
        : getElementError(message, container),
  });
}
