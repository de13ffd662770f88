import { defineConfig } from 'vitest/config';

export default defineConfig({
  test: {
    include: ['src/**/*.test.ts', 'test/**/*.test.ts'],
    testTimeout: 30_000,
    // A busy machine may take its time over an edit in the browser: what is polled for is waited for.
    expect: { poll: { timeout: 10_000 } },
    pool: 'threads',
    isolate: false,
  },
});
