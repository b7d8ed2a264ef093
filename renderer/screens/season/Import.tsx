/**
 * A fixture list read in: what it would change is shown before anything changes; what can be read
 * two ways is asked.
 */
import { Box, Button, Stack } from '@mui/material'
import type { ChangeEvent } from 'react'
import { termWords } from '../../../shared/engine/visit/terms.ts'
import { Trouble } from '../../parts/form.tsx'
import { Panel } from '../../parts/panels.tsx'
import { Choice, Text } from './fields.tsx'
import { changesOf, ImportPreview } from './ImportPreview.tsx'
import { textOf } from './listText.ts'
import { codeOptions, type Option } from './options.ts'
import { type ImportProps, type ListImport, useListImport } from './useListImport.ts'

const optionWords: Record<string, string> = { 'day-month': 'day first', 'month-day': 'month first' }
const optionOf = (option: string): Option => [option, optionWords[option] ?? termWords(option)]

export function Import(props: ImportProps) {
	const list = useListImport(props)
	const { preview, says, busy, look, take } = list
	const asks = preview !== undefined && preview.questions.length > 0
	const count = preview ? changesOf(preview) : 0
	return (
		<Panel
			named
			title="Import a fixture list"
			hint="Calendar (.ics) or table (.csv). Nothing changes before you have seen what would."
		>
			<Stack spacing={1.25}>
				<AboutList list={list} />
				<ListFile list={list} />
				<Text label="or paste its text" rows={4} value={list.text} set={list.type} />
				<Trouble says={says} />
				<Questions list={list} />
				<Box>
					<Button variant="outlined" disabled={busy} onClick={() => void look()}>
						{asks ? 'Read again with these answers' : 'Show what would change'}
					</Button>
				</Box>
			</Stack>
			<Box role="status" aria-live="polite" sx={{ mt: 1 }}>
				{preview && <ImportPreview preview={preview} />}
			</Box>
			{preview && count > 0 && !asks && (
				<Button variant="contained" sx={{ mt: 1.5 }} onClick={() => take(preview)}>
					Take these {count} changes over
				</Button>
			)}
		</Panel>
	)
}

interface OfList {
	list: ListImport
}
/** What a list does not say of itself. */
function AboutList({ list }: OfList) {
	return (
		<>
			<Text label="Name of the list" value={list.source} set={list.setSource} />
			<Box sx={{ display: 'grid', gridTemplateColumns: 'minmax(0, 1fr) minmax(0, 1fr)', gap: 1 }}>
				<Text
					label="Team of the list"
					value={list.team}
					set={list.setTeam}
					hint="Only where there are several"
				/>
				<Choice
					label="Code of the list"
					value={list.code}
					set={list.setCode}
					none="as in the visit"
					options={codeOptions}
				/>
			</Box>
		</>
	)
}
function ListFile({ list }: OfList) {
	const read = (event: ChangeEvent<HTMLInputElement>) => {
		const [file] = event.target.files ?? []
		file?.arrayBuffer().then(
			(bytes) => list.type(textOf(bytes)),
			() => list.setSays(`The file ${file.name} could not be read. Choose it again.`),
		)
	}
	return (
		<Box>
			<Box
				component="label"
				htmlFor="season-file"
				sx={{ display: 'block', fontSize: '0.85rem', fontWeight: 600 }}
			>
				File
			</Box>
			<Box
				component="input"
				id="season-file"
				type="file"
				accept=".ics,.csv,text/calendar,text/csv"
				sx={{ display: 'block', minHeight: 44, font: 'inherit', width: '100%' }}
				onChange={read}
			/>
		</Box>
	)
}
function Questions({ list: { preview, answers, answer } }: OfList) {
	return preview?.questions.map(({ key, says, options }) => (
		<Choice
			key={key}
			label={says}
			value={answers[key] ?? ''}
			set={(value) => answer(key, value)}
			options={options.map(optionOf)}
		/>
	))
}
