import type { Reporter, TestModule } from 'vitest/node';

/** Prints one last line, `N passed, N failed` (and skipped, where any were), however the run ended. */
export default class TallyReporter implements Reporter {
  onTestRunEnd(modules: readonly TestModule[], unhandled: readonly unknown[]): void {
    const count = { passed: 0, failed: unhandled.length, skipped: 0 };
    for (const module of modules) {
      if (module.state() === 'failed' && [...module.children.allTests()].length === 0) count.failed += 1;
      for (const test of module.children.allTests()) {
        const { state } = test.result();
        if (state === 'passed' || state === 'failed' || state === 'skipped') count[state] += 1;
      }
    }
    const skipped = count.skipped > 0 ? `, ${count.skipped} skipped` : '';
    // After the default reporter's summary, so that this stays the last line.
    process.on('exit', () =>
      process.stdout.write(`${count.passed} passed, ${count.failed} failed${skipped}\n`),
    );
  }
}
