import { defineConfig } from 'vitest/config'

// Eleventy loads its config by itself, past the test runner, so the workers need what bin.mjs registers.
export default defineConfig({ test: { include: ['tests/**/*.test.ts'], globalSetup: ['tests/without-demo.ts'], pool: 'forks', execArgv: ['--import', 'tsx'], testTimeout: 60_000, hookTimeout: 120_000 } })
