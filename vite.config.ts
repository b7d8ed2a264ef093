import react from '@vitejs/plugin-react'
import { defineConfig } from 'vite'

export default defineConfig({
	root: 'renderer',
	plugins: [react()],
	build: {
		outDir: '../build/renderer',
		emptyOutDir: true,
		assetsInlineLimit: 0,
		modulePreload: { polyfill: false },
	},
})
