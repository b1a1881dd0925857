/** A reporter that closes the test run with one plain line. */
export default class PlainCount {
  onRunComplete(_contexts, { numPassedTests, numFailedTests, numRuntimeErrorTestSuites }) {
    console.log(`${numPassedTests} passed, ${numFailedTests + numRuntimeErrorTestSuites} failed`);
  }
}
