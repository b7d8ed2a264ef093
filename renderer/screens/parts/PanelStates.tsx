/** Sheets, tables, ways and shortcuts. */
import { Button } from '@mui/material'
import { KeySheet } from '../../parts/KeySheet.tsx'
import { Empty } from '../../parts/Page.tsx'
import { acts, Panel, Rows, Way } from '../../parts/panels.tsx'
import { RoomNav } from '../../parts/RoomNav.tsx'
import { Specimen } from './Specimen.tsx'
import { longName } from './sample.ts'

const heads = ['Name', 'Born', 'Pairs', acts]
const rows = ['Sample Player', longName].map((name) => ({
	key: name,
	cells: [
		name,
		'2 April 2012',
		name.length,
		<Button key="act" size="small" variant="outlined" aria-label={`Open ${name}`}>
			Open
		</Button>,
	],
}))
export function PanelStates() {
	return (
		<>
			<Specimen
				part="Panel"
				states={[
					{
						name: 'with a hint',
						part: (
							<Panel title="Sample" hint={longName}>
								Inside
							</Panel>
						),
					},
					{ name: 'without a title', part: <Panel title="">Inside</Panel> },
					{
						name: 'with something beside its title',
						part: (
							<Panel title="Sample" beside={<Way to="#/players">All players</Way>}>
								Inside
							</Panel>
						),
					},
					{
						name: 'empty, with the way to begin',
						part: (
							<Panel title="Sample">
								<Empty
									says="Nothing yet. What is added stands here."
									act={<Button variant="contained">Add a sample</Button>}
								/>
							</Panel>
						),
					},
				]}
			/>
			<Specimen
				part="Rows"
				states={[
					{
						name: 'two rows, one too long',
						part: (
							<Rows
								label="Sample rows"
								heads={heads}
								figures={['Pairs']}
								rows={rows}
								empty="Nobody yet."
							/>
						),
					},
					{
						name: 'empty',
						part: (
							<Rows label="No rows" heads={heads} rows={[]} empty="Nobody yet. Add one above." />
						),
					},
				]}
			/>
			<Specimen
				part="Ways"
				states={[
					{
						name: 'pages of a room',
						part: (
							<RoomNav
								label="Sample room"
								pages={[
									{ to: '#/parts', title: 'Parts', here: true },
									{ to: '#/players', title: longName },
								]}
							/>
						),
					},
					{ name: 'one way', part: <Way to="#/players">Back to the players</Way> },
				]}
			/>
			<Specimen part="Shortcuts" states={[{ name: 'all of them', part: <KeySheet /> }]} />
		</>
	)
}
