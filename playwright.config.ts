import { defineConfig } from '@playwright/test'

export default defineConfig({
	testDir: 'tests',
	globalSetup: ['./tests/temporary.ts', './tests/screens/demo-ready.ts'],
	testMatch: ['screens/**/*.spec.ts', 'window/**/*.spec.ts'],
	workers: 1,
	timeout: 180_000,
	// a busy machine is slower, not wrong
	expect: { timeout: 15_000 },
	reporter: [['list']],
	use: {
		viewport: { width: 1440, height: 900 },
		launchOptions: {
			...(process.env.LASTWRIGHT_BROWSER ? { executablePath: process.env.LASTWRIGHT_BROWSER } : {}),
			args: [
				'--no-sandbox',
				'--disable-gpu',
				'--disable-quic',
				'--no-first-run',
				'--disable-background-networking',
				'--disable-component-update',
				'--disable-sync',
			],
		},
	},
})
