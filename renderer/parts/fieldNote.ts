/**
 * Where the words of a field stand, so that nothing moves when they come: what is told of a number
 * in one line within its frame, what is wrong with it in full over what follows while the hand is
 * there.
 */
const told = '& .MuiFormHelperText-root'
const asked = '&:focus-within .MuiFormHelperText-root[role=alert]'
const oneLine = {
	position: 'absolute',
	left: '0.75rem',
	right: '0.75rem',
	bottom: '0.25rem',
	m: 0,
	overflow: 'hidden',
	textOverflow: 'ellipsis',
	whiteSpace: 'nowrap',
	textAlign: 'right',
	fontSize: '0.78rem',
	lineHeight: 1.3,
	pointerEvents: 'none',
	fontVariantNumeric: 'tabular-nums',
} as const
const inFull = {
	left: 'auto',
	right: 0,
	bottom: 'auto',
	top: 'calc(100% + 4px)',
	zIndex: 2,
	width: 'max-content',
	maxWidth: '20rem',
	px: 1,
	py: 0.5,
	whiteSpace: 'normal',
	textAlign: 'left',
	fontSize: '0.85rem',
	bgcolor: 'background.paper',
	border: 2,
	borderColor: 'currentColor',
	borderRadius: 1,
} as const
/** Of a number. Its value is read from where the foot is held. */
export const numberNote = {
	[told]: oneLine,
	[asked]: inFull,
	'& .MuiInputBase-input': { pt: '0.2rem', pb: '1.3rem', height: 'auto' },
} as const
/** Of a text: nothing is told of it unless it cannot be kept. */
export const textNote = { [told]: { mx: 1, my: 0.25 }, [asked]: { ...oneLine, ...inFull } } as const
