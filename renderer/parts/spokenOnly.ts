/** For what is read out but not seen: the eye has it from the layout. */
export const spokenOnly = {
	position: 'absolute',
	width: '1px',
	height: '1px',
	overflow: 'hidden',
	clipPath: 'inset(50%)',
	whiteSpace: 'nowrap',
} as const
