import { defineConfig } from 'vitest/config'

export default defineConfig({ test: { globalSetup: ['tests/temporary.ts'], include: ['tests/{published,engine,host}/**/*.test.ts'], testTimeout: 30000 } })
