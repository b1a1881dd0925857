import { configure, getConfig, type Config } from '@testing-library/dom';

const { getElementError } = getConfig();

/** Not in the library's types: whether it looks again later. */
interface Looking extends Config {
  readonly _disableExpensiveErrorDiagnostics: boolean;
}
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
