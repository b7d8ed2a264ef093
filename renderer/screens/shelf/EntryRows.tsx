/** Sizes or studs as a table of entries, a row each, with a row more at a press. */
import { Box, Button } from '@mui/material'
import { useEffect, useRef } from 'react'
import { scrollsX } from '../../parts/scrollsX.ts'
import { Entry, titleWithUnit } from './Entry.tsx'
import type { Row } from './modelTexts.ts'
import type { Shown } from './useModelForm.ts'

const narrowest = 700

interface EntryRowsProps {
	what: 'size' | 'stud'
	prefix: 'sizes' | 'studs'
	/** Fields of a row, a column each. */
	names: readonly string[]
	rows: readonly Row[]
	put: (rows: Row[]) => void
	/** Makes a row more. */
	add: () => Row
	/** Widths of the columns, as a grid has them. */
	columns: string
	shown: Shown
	hints?: Record<string, string>
}
export function EntryRows(props: EntryRowsProps) {
	const { what, prefix, names, rows, put, add, columns } = props
	const { box, willAdd } = useFocusOnNewRow(rows.length)
	return (
		<Box ref={box} sx={{ ...scrollsX, display: 'grid', gap: 1 }}>
			<Box
				aria-hidden="true"
				sx={{
					display: 'grid',
					gridTemplateColumns: columns,
					gap: 1,
					fontSize: '0.85rem',
					fontWeight: 600,
					minWidth: narrowest,
				}}
			>
				{names.map((name) => (
					<span key={name}>{titleWithUnit(`${prefix}.0.${name}`)}</span>
				))}
			</Box>
			{rows.map((row, index) => (
				<EntryRow key={row.key} {...props} row={row} index={index} />
			))}
			<Button
				sx={{ justifySelf: 'start' }}
				variant="outlined"
				onClick={() => {
					willAdd()
					put([...rows, add()])
				}}
			>
				Add a {what}
			</Button>
		</Box>
	)
}

/** After `willAdd` the focus goes to the first field of the row that comes. */
function useFocusOnNewRow(count: number) {
	const adding = useRef(false)
	const box = useRef<HTMLDivElement>(null)
	// biome-ignore lint/correctness/useExhaustiveDependencies: a new row brings the focus to it
	useEffect(() => {
		if (!adding.current) return
		adding.current = false
		const fields = box.current?.querySelectorAll<HTMLElement>('[data-row]:last-of-type input')
		fields?.[0]?.focus()
	}, [count])
	const willAdd = () => {
		adding.current = true
	}
	return { box, willAdd }
}

interface EntryRowProps extends EntryRowsProps {
	row: Row
	index: number
}
function EntryRow(props: EntryRowProps) {
	const { what, prefix, names, rows, put, columns, shown, hints = {}, row, index } = props
	const rowName = `${what} ${index + 1}`
	const putText = (name: string, text: string) => {
		const next = { ...row, texts: { ...row.texts, [name]: text } }
		put(rows.map((other) => (other.key === row.key ? next : other)))
	}
	return (
		<Box
			data-row
			sx={{
				display: 'grid',
				gridTemplateColumns: columns,
				gap: 1,
				alignItems: 'start',
				minWidth: narrowest,
			}}
		>
			{names.map((name) => {
				const path = `${prefix}.${index}.${name}`
				return (
					<Entry
						key={name}
						path={path}
						rowName={rowName}
						value={row.texts[name] ?? ''}
						error={shown.errors[path]}
						question={shown.questions[path]}
						placeholder={hints[name]}
						set={(text) => putText(name, text)}
					/>
				)
			})}
			<Button
				size="small"
				aria-label={`Remove ${rowName}`}
				onClick={() => put(rows.filter((other) => other.key !== row.key))}
			>
				Remove
			</Button>
		</Box>
	)
}
