import { defineConfig } from 'vitest/config'

export default defineConfig({
	test: {
		globalSetup: ['tests/temporary.ts'],
		setupFiles: ['tests/examples.ts'],
		include: ['tests/{published,engine,host}/**/*.test.ts'],
		testTimeout: 60000,
		retry: process.env.CI ? 1 : 0,
		expect: { poll: { timeout: 20000 } },
	},
})
