/** The sheet of the appointment beside what is done with it, where the window is wide enough. */
export const twoColumns = {
	display: 'grid',
	gap: 3,
	gridTemplateColumns: 'minmax(0, 1fr)',
	alignItems: 'start',
	'@container (min-width: 82rem)': { gridTemplateColumns: 'minmax(0, 1fr) minmax(0, 1fr)' },
} as const
