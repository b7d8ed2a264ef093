/** The look of the short lists with a button at the end of each row. */
export const listed = {
	list: {
		m: 0,
		mt: 1,
		p: 0,
		listStyle: 'none',
		'& > li': {
			display: 'flex',
			alignItems: 'center',
			gap: 1,
			borderBottom: 1,
			borderColor: 'divider',
			py: 0.25,
		},
	},
	words: { flexGrow: 1, fontSize: '0.92rem' },
} as const
