/** The look: ink and deep teal on warm paper; targets of 44 px, focus always visible. */
import { createTheme } from '@mui/material/styles'

const target = { minHeight: 44 }
export const theme = createTheme({
	cssVariables: true,
	colorSchemes: {
		light: { palette: { primary: { main: '#1f5f5b' }, background: { default: '#f7f3ea', paper: '#fffdf8' }, text: { primary: '#18292b', secondary: '#44575a' } } },
		dark: { palette: { primary: { main: '#86cfc5' }, background: { default: '#132022', paper: '#1b2b2d' }, text: { primary: '#f1ede3', secondary: '#b9c7c5' } } },
	},
	shape: { borderRadius: 6 },
	typography: {
		fontFamily: "'Noto Sans', sans-serif",
		h1: { fontSize: '1.75rem', fontWeight: 700 }, h2: { fontSize: '1.25rem', fontWeight: 600 }, h3: { fontSize: '1rem', fontWeight: 600 },
		button: { textTransform: 'none', fontWeight: 600 },
	},
	components: {
		MuiButton: { styleOverrides: { root: target } },
		MuiToggleButton: { styleOverrides: { root: target } },
		MuiCssBaseline: { styleOverrides: { ':focus-visible': { outline: '3px solid currentColor', outlineOffset: 2 } } },
	},
})
