// The program outside the screens as a few files of JavaScript: nothing is stripped of its types and
// hardly a file is looked for while it starts. Packages stay where they are, but for the one that
// every schema is made of.
import { defineConfig } from 'vite'
import { builtProgram, threads } from './electron/place.ts'

export default defineConfig({
	ssr: { noExternal: ['zod'] },
	build: {
		ssr: true,
		outDir: builtProgram,
		emptyOutDir: true,
		minify: false,
		target: 'node20',
		chunkSizeWarningLimit: 2000,
		rolldownOptions: {
			input: { main: 'electron/command/main.ts', ...threads },
			output: { entryFileNames: '[name].js', chunkFileNames: 'part-[name]-[hash].js' },
		},
	},
})
