import { availableParallelism } from 'node:os'
import { defineConfig } from 'vitest/config'

export default defineConfig({
	test: {
		globalSetup: ['tests/temporary.ts'],
		setupFiles: ['tests/examples.ts'],
		// a search over more examples than the usual hundred is longer, not stuck
		testTimeout: 60_000 * Math.max(1, Number(process.env.LASTWRIGHT_RUNS ?? 100) / 100),
		maxWorkers: availableParallelism(),
		// the code runs as it is on the pinned Node; nothing has to be rewritten for a test
		experimental: { viteModuleRunner: false },
		expect: { poll: { timeout: 20_000 } },
		projects: [
			{
				extends: true,
				test: {
					name: 'unit',
					include: ['tests/{published,engine}/**/*.test.ts'],
					// pure functions keep nothing: a worker reads them once for all its files
					isolate: false,
				},
			},
			{
				extends: true,
				test: { name: 'host', include: ['tests/{host,compatibility}/**/*.test.ts'] },
			},
		],
	},
})
