/**
 * The chosen look over the one of the system: the same colour roles under an attribute of the page.
 */
import { createTheme } from '@mui/material/styles'
import { textSizes } from '../../shared/desk/workplace/look-choices.ts'
import { theme } from '../theme.ts'

type Vars = Record<string, string | number>
/**
 * The colour variables of a theme's scheme: those of `:root` alone, or those under the wish for
 * dark.
 */
function varsOf(sheets: readonly Record<string, unknown>[], dark: boolean): Vars {
	const found: Vars = {}
	for (const sheet of sheets)
		for (const [selector, body] of Object.entries(sheet)) {
			const under = selector.startsWith('@media')
				? Object.values(body as Record<string, Vars>)[0]
				: undefined
			if (under !== undefined && /dark/.test(selector) === dark) Object.assign(found, under)
			if (under === undefined && !dark) Object.assign(found, body as Vars)
		}
	return found
}
const contrast = createTheme({
	cssVariables: true,
	colorSchemes: {
		light: {
			palette: {
				primary: { main: '#ffe14d', dark: '#ffd000', light: '#fff0a0', contrastText: '#000000' },
				background: { default: '#000000', paper: '#000000' },
				text: { primary: '#ffffff', secondary: '#f2f2f2' },
				divider: '#ffffff',
				warning: { main: '#ffc46b', contrastText: '#000000' },
				error: { main: '#ffb0aa', contrastText: '#000000' },
				success: { main: '#a8f0b0', contrastText: '#000000' },
				info: { main: '#a8dcff', contrastText: '#000000' },
				action: {
					active: '#ffffff',
					hover: 'rgba(255,255,255,0.16)',
					selected: 'rgba(255,225,77,0.3)',
					disabled: '#c8c8c8',
					disabledBackground: '#333333',
				},
			},
		},
	},
})
const sheetsOf = (sheetsIn: typeof theme): Record<string, unknown>[] =>
	(
		sheetsIn as unknown as { generateStyleSheets(): Record<string, unknown>[] }
	).generateStyleSheets()
/** The surface of a message box is mixed from its colour; in high contrast it is plain. */
const alertPlain = Object.fromEntries(
	['error', 'warning', 'info', 'success'].flatMap((name) => [
		[`--mui-palette-Alert-${name}StandardBg`, '#000000'],
		[`--mui-palette-Alert-${name}Color`, '#ffffff'],
	]),
)
export const lookStyles: Record<string, object> = {
	':root[data-lw-look="light"]': {
		...varsOf(sheetsOf(theme), false),
		'--lw-focus': '#b3500a',
		colorScheme: 'light',
	},
	':root[data-lw-look="dark"]': {
		...varsOf(sheetsOf(theme), true),
		'--lw-focus': '#ffc46b',
		colorScheme: 'dark',
	},
	':root[data-lw-look="contrast"]': {
		...varsOf(sheetsOf(contrast), false),
		...alertPlain,
		'--lw-focus': '#ff9ef5',
		colorScheme: 'dark',
	},
	':root[data-lw-look="contrast"] :is(.MuiAlert-root, .MuiOutlinedInput-notchedOutline)': {
		border: '1px solid #ffffff',
	},
	// paper is light, whatever the screen is, and its letters have their own size
	'@media print': {
		':root:root:root': { ...varsOf(sheetsOf(theme), false), colorScheme: 'light', fontSize: '80%' },
	},
	...Object.fromEntries(
		textSizes.map((percent) => [`:root[data-lw-text="${percent}"]`, { fontSize: `${percent}%` }]),
	),
}
