/**
 * The look: deep teal ink on warm paper; targets of 44 px, focus always visible, light and dark by
 * the system's wish.
 */
import { createTheme } from '@mui/material/styles'

const target = { minHeight: 44 }
/** The ring stands off the control, so it shows against paper and against a filled button alike. */
const ring = { outline: '3px solid var(--lw-focus)', outlineOffset: 2 }

export const theme = createTheme({
	cssVariables: true,
	colorSchemes: {
		light: {
			palette: {
				primary: { main: '#17524f', dark: '#0e3b39', light: '#2f716d', contrastText: '#fffdf8' },
				background: { default: '#f6f1e7', paper: '#fffdf8' },
				text: { primary: '#17292b', secondary: '#46585a' },
				divider: '#d9d0bf',
				warning: { main: '#8f4a00' },
				error: { main: '#a32020' },
				success: { main: '#2d6436' },
				info: { main: '#22567d' },
			},
		},
		dark: {
			palette: {
				primary: { main: '#8ad0c6', dark: '#6bb5ab', light: '#b1e3db', contrastText: '#0d2422' },
				background: { default: '#121d1f', paper: '#1a292b' },
				text: { primary: '#f1ede3', secondary: '#b9c7c5' },
				divider: '#3a4c4e',
				warning: { main: '#f0b566' },
				error: { main: '#f39a93' },
				success: { main: '#93cf9b' },
				info: { main: '#93c4ea' },
			},
		},
	},
	shape: { borderRadius: 6 },
	typography: {
		fontFamily: "'Noto Sans', sans-serif",
		h1: { fontSize: '1.75rem', fontWeight: 700, lineHeight: 1.25, letterSpacing: '-0.01em' },
		h2: { fontSize: '1.2rem', fontWeight: 600, lineHeight: 1.35 },
		h3: { fontSize: '1rem', fontWeight: 600, lineHeight: 1.4 },
		body1: { lineHeight: 1.55 },
		button: { textTransform: 'none', fontWeight: 600 },
	},
	components: {
		MuiButtonBase: {
			defaultProps: { disableRipple: true },
			styleOverrides: { root: { '&:focus-visible, &.Mui-focusVisible': ring } },
		},
		MuiButton: {
			defaultProps: { disableElevation: true },
			styleOverrides: {
				root: {
					...target,
					paddingInline: 18,
					'@media (forced-colors: active)': {
						'&.MuiButton-contained': {
							color: 'ButtonText',
							backgroundColor: 'ButtonFace',
							border: '1px solid ButtonText',
						},
					},
				},
			},
		},
		// with large letters a chip grows round its words
		MuiChip: {
			styleOverrides: {
				root: {
					height: 'auto',
					minHeight: 24,
					paddingBlock: 1,
					'& .MuiChip-label': { whiteSpace: 'normal' },
					'@media (forced-colors: active)': {
						color: 'CanvasText',
						backgroundColor: 'Canvas',
						border: '1px solid CanvasText',
					},
				},
			},
		},
		// a choice not taken reads as well as one taken; the one taken is filled
		MuiToggleButton: {
			styleOverrides: {
				root: ({ ownerState }) => {
					const role = ownerState.color === 'error' ? 'error' : 'primary'
					const filled = {
						backgroundColor: `var(--mui-palette-${role}-main)`,
						color: `var(--mui-palette-${role}-contrastText)`,
					}
					return {
						...target,
						minWidth: 44,
						color: 'var(--mui-palette-text-primary)',
						borderColor: 'var(--mui-palette-text-secondary)',
						'&.Mui-selected': filled,
						'&.Mui-selected:hover': filled,
						'&.Mui-disabled': { borderColor: 'var(--mui-palette-divider)' },
						'@media (forced-colors: active)': {
							'&.Mui-selected': {
								backgroundColor: 'Highlight',
								color: 'HighlightText',
								forcedColorAdjust: 'none',
							},
						},
					}
				},
			},
		},
		MuiIconButton: { styleOverrides: { root: { ...target, minWidth: 44 } } },
		MuiRadio: { styleOverrides: { root: { ...target, minWidth: 44 } } },
		// a line that is typed stays as short as one that is read
		MuiFormControl: { styleOverrides: { root: { maxWidth: '52rem' } } },
		MuiFormControlLabel: { styleOverrides: { root: target } },
		MuiCheckbox: { styleOverrides: { root: { ...target, minWidth: 44 } } },
		MuiOutlinedInput: {
			styleOverrides: {
				root: {
					...target,
					backgroundColor: 'var(--mui-palette-background-paper)',
					'&.Mui-focused': ring,
					'&.Mui-error .MuiOutlinedInput-notchedOutline': { borderWidth: 2 },
				},
				// the edge of a field is seen at arm's length: 3 to 1 against the paper (WCAG 2.2, 1.4.11,
				// from memory)
				notchedOutline: {
					top: 0,
					borderColor: 'var(--mui-palette-text-secondary)',
					'& legend': { display: 'none' },
				},
				input: {
					'&:not(textarea)': { paddingBlock: 10 },
					'&[type=date]': { minHeight: '1.4375em' },
					'&[type=color]': { height: 28, cursor: 'pointer' },
				},
			},
		},
		// the label stands above its field: at no letter size does it cross the value, and the focus
		// ring never crosses it
		MuiInputLabel: {
			defaultProps: { shrink: true },
			styleOverrides: {
				root: {
					position: 'static',
					transform: 'none',
					marginBottom: 4,
					maxWidth: '100%',
					fontSize: '0.9rem',
					fontWeight: 600,
					color: 'var(--mui-palette-text-primary)',
					whiteSpace: 'normal',
					pointerEvents: 'auto',
				},
			},
		},
		MuiFormHelperText: { styleOverrides: { root: { fontSize: '0.85rem', marginInline: 2 } } },
		// a way on within a message keeps its ring whole
		MuiAlert: { styleOverrides: { message: { overflow: 'visible', minWidth: 0 } } },
		// what scrolls within a dialog is as wide as the dialog: its ring stands inside
		MuiDialogContent: {
			styleOverrides: { root: { '&:focus-visible': { outlineOffset: '-3px' } } },
		},
		MuiPaper: {
			defaultProps: { elevation: 0 },
			styleOverrides: { root: { backgroundImage: 'none' } },
		},
		// a link that fills a cell is as high as a button without making its row higher
		MuiTableCell: {
			styleOverrides: {
				root: {
					'& > a:only-child': {
						display: 'inline-flex',
						alignItems: 'center',
						...target,
						marginBlock: '-11px',
					},
				},
				// the head of a column is told from what stands under it by tone, not by a box
				head: { fontWeight: 600, color: 'var(--mui-palette-text-secondary)' },
				body: { fontVariantNumeric: 'tabular-nums' },
			},
		},
		MuiCssBaseline: {
			styleOverrides: {
				':root': { '--lw-focus': '#b3500a', colorScheme: 'light dark' },
				'@media (prefers-color-scheme: dark)': { ':root': { '--lw-focus': '#ffc46b' } },
				':focus-visible': ring,
				// what scrolls to the focus leaves room for its ring
				':is(a, button, input, select, textarea, summary, [tabindex], [draggable=true])': {
					scrollMargin: '8px',
					scrollMarginTop: 'calc(var(--frame-stays, 0rem) + 8px)',
				},
				// headings take focus only so that a screen reader starts at the new page
				'h1[tabindex="-1"]:focus-visible, h2[tabindex="-1"]:focus-visible, main:focus-visible': {
					outline: 'none',
				},
				// while a screen opens, what will stand below it is not shown, so that nothing moves under
				// the eye
				'main:has(> p[role=status]) ~ footer, main > p[role=status] ~ nav': {
					visibility: 'hidden',
				},
				'input[type=file]::file-selector-button': {
					font: 'inherit',
					fontWeight: 600,
					minHeight: 44,
					padding: '0 16px',
					marginRight: 12,
					border: '1px solid var(--mui-palette-primary-main)',
					borderRadius: 6,
					backgroundColor: 'var(--mui-palette-background-paper)',
					color: 'var(--mui-palette-primary-main)',
					cursor: 'pointer',
				},
			},
		},
	},
})
