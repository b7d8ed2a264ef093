import { defineConfig } from 'vitest/config'

export default defineConfig({ test: { include: ['tests/{published,engine,host}/**/*.test.ts'], testTimeout: 30000 } })
