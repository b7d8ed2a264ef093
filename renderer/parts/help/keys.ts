/** Every shortcut, in one list: the sheet is made of it. */
export const keySheet: readonly {
	where: string
	keys: readonly (readonly [keys: string, does: string])[]
}[] = [
	{
		where: 'Everywhere',
		keys: [
			['Ctrl+K', 'Command palette: steps, players, their visits, season, shelf, settings'],
			['Ctrl+/', 'This sheet'],
			['F2', 'Hand over: another person takes over by PIN or passphrase; drafts are saved first'],
			['Ctrl+Shift+L', 'Lock'],
			['F1', 'Help for the field in focus, or the help pages'],
		],
	},
	{
		where: 'In an assessment',
		keys: [
			['Alt+1 to Alt+8', 'To the step with that number'],
			['Alt+0', 'In a re-check, to what is asked of the time since'],
			['Alt+N', 'To the next thing to do on this step'],
			['Alt+G', 'To the gate on Decide: what is held'],
			['Alt+T', 'On Play, for a player who comes back: play, conditions and pairs as last time'],
			['Alt+A', 'On Play: add a pair'],
			['Alt+L', 'All that is missing on this step: open, close'],
			['Alt+M', 'All findings of this step: open, close'],
			['Alt+C', 'The course over the visits: open, close'],
			['Alt+W', 'How it was worked out: open, close'],
			['Alt+P', 'Preview of the report beside Decide: open, close'],
			['Ctrl+Z, Ctrl+Shift+Z', 'Undo and redo, until signing'],
			['Enter, Shift+Enter', 'Next field, field before; on the last field, the next step'],
		],
	},
	{
		where: 'In a question of Decide',
		keys: [
			['A', 'As proposed'],
			['C', 'Change'],
			['S', 'Set aside, with the reason'],
			['U', 'Unchanged since the last visit, where nothing changed'],
			['Enter, arrow down, arrow up', 'Open; on to the next question, back to the one before'],
		],
	},
	{
		where: 'In a field',
		keys: [
			['Space between numbers', 'Repeats: 246 247'],
			['=', 'Same as the other side'],
			[
				'n',
				'Not measured; np pain, nr refused, nd no device, nt no time, nc could not hold the ' +
					'position, nx not needed today',
			],
			['26.4 cm, 10 3/8 in', 'Units are understood'],
			['Ctrl+V', 'A block with tabs, semicolons or lines opens a preview'],
			['y, n', 'Yes and no where a question is in focus'],
		],
	},
	{
		where: 'One key, only where switched on in Settings, Look',
		keys: [
			['1 to 8', 'To that step'],
			['p, s', 'Players, shelf'],
			['?', 'This sheet'],
		],
	},
]
