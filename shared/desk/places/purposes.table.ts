/**
 * What a folder or a file of this PC is chosen for: a folder or a file, which files show, and the
 * call of the contract that then works with it. Who may make that call may choose.
 */
interface Row {
	picks: 'folder' | 'file'
	/** the dialog's title */
	title: string
	/** files are shown by the ends of their names */
	endings: readonly string[]
	/** what such a file is called, one and many */
	files: readonly [one: string, many: string]
	serves: string
}
const folder = { picks: 'folder', endings: [], files: ['', ''] } as const
const pack = '.lwpack'

export const purposes = {
	backups: { ...folder, title: 'Folder for backups', serves: 'backups.setFolder' },
	pack: { ...folder, title: 'Folder or stick for the pack', serves: 'outreach.makePack' },
	'way-back': {
		...folder,
		title: 'Folder or stick for the way back',
		serves: 'outreach.makeReturn',
	},
	reports: { ...folder, title: 'Folder for the reports', serves: 'squad.reports' },
	'come-home': {
		picks: 'file',
		title: 'File for the way back',
		endings: [pack],
		files: ['pack file', 'pack files'],
		serves: 'outreach.merge',
	},
	'move-here': {
		picks: 'file',
		title: 'Backup or pack',
		endings: [pack, '.db'],
		files: ['backup or pack', 'backups or packs'],
		serves: 'session.moveHere',
	},
} as const satisfies Record<string, Row>
export type Purpose = keyof typeof purposes
export const purposeNames = Object.keys(purposes) as [Purpose, ...Purpose[]]

/** Whether a file is shown for a purpose, by the end of its name in either case of letters. */
export const isWanted = (purpose: Purpose, name: string): boolean => {
	const lower = name.toLowerCase()
	return purposes[purpose].endings.some((ending) => lower.endsWith(ending))
}
