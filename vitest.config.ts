import { availableParallelism } from 'node:os'
import { defineConfig } from 'vitest/config'

export default defineConfig({
	test: {
		globalSetup: ['tests/temporary.ts'],
		setupFiles: ['tests/examples.ts'],
		include: ['tests/{published,engine,host}/**/*.test.ts'],
		testTimeout: 60_000,
		// both processors: the tests are many small ones
		maxWorkers: availableParallelism(),
		expect: { poll: { timeout: 20_000 } },
	},
})
