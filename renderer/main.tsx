/** The first script: style, address and answers of the host round the workstation. */
import createCache from '@emotion/cache'
import { CacheProvider } from '@emotion/react'
import { CssBaseline, GlobalStyles, ThemeProvider } from '@mui/material'
import { QueryClientProvider } from '@tanstack/react-query'
import { createRoot } from 'react-dom/client'
import { Router } from 'wouter'
import { useHashLocation } from 'wouter/use-hash-location'
import './fonts.css'
import { App } from './frame/App.tsx'
import { keepFocus } from './parts/keepFocus.ts'
import { lookStyles } from './parts/lookStyles.ts'
import { printStyles } from './parts/printStyles.ts'
import { hostClient } from './query.ts'
import { theme } from './theme.ts'

// the page allows no style but that with this nonce
const nonce = document.querySelector<HTMLMetaElement>('meta[name="csp-nonce"]')?.content
const cache = createCache({ key: 'lw', nonce, prepend: true })

keepFocus()
const root = document.getElementById('root')
if (root)
	createRoot(root).render(
		<CacheProvider value={cache}>
			<ThemeProvider theme={theme}>
				<CssBaseline />
				<GlobalStyles styles={lookStyles} />
				<GlobalStyles styles={printStyles} />
				<QueryClientProvider client={hostClient}>
					<Router hook={useHashLocation}>
						<App />
					</Router>
				</QueryClientProvider>
			</ThemeProvider>
		</CacheProvider>,
	)
