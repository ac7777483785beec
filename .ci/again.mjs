import { writeFileSync } from 'node:fs';

/** Writes down which tests passed at their second try only, as a list of names. */
export default class Again {
  #names = [];
  #file;

  onInit({ config }) {
    this.#file = config.outputFile.again;
  }

  onTestCaseResult(test) {
    if (test.diagnostic()?.flaky) this.#names.push(test.fullName);
  }

  onTestRunEnd() {
    writeFileSync(this.#file, JSON.stringify(this.#names));
  }
}
